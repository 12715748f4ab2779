import type { MessageKind } from './kind.js';

/** What a coordinator sends to see whether messages arrive. */
export interface TestNews {
  readonly kind: 'test';
}

export const testKind: MessageKind<TestNews> = {
  subject: null,
  urgency: () => 'now',
  passage: (_, { speech: { say } }) => ({
    head: say('letter-test-head', {}),
    says: [say('letter-test-says', {})],
    figures: [],
    means: null,
    might: null,
  }),
};
