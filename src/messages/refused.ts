import { Refusal } from '../refusal.js';

/** What a person asked of the messages or the feeds and did not get. */
export interface MessagesRefusedWords {
  'messages-unknown-person': Record<never, never>;
  'messages-bad-person': { readonly place: string };
  'feeds-unknown-station': { readonly station: string };
  'feeds-no-readings': Record<never, never>;
}

type Refused = {
  [Code in keyof MessagesRefusedWords]: { readonly code: Code; readonly with: MessagesRefusedWords[Code] };
}[keyof MessagesRefusedWords];

export class MessagesRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Refused) {
    super(remark.code);
    this.name = 'MessagesRefused';
  }
}
