/** Control characters, and those that turn the direction of writing round. */
const unseen = /[\p{Cc}\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ufeff]+/gu;

/** Text of a file as it may be kept and shown: one line, nothing that a terminal acts upon. */
export function plain(text: string): string {
  return text.replace(unseen, ' ').replace(/\s+/g, ' ').trim();
}
