/** Asking other machines, within bounds: messages go out through it, feeds come in. */
export { addressOf, mayAsk, type NamedAddresses } from './addresses.js';
export { type Answered, ask, failure, type Question } from './ask.js';
export { NetworkFailed, type NetworkRemark, type NetworkWords } from './refused.js';
