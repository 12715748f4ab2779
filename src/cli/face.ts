import type { Language } from '../words/format.js';
import type { AllWords } from '../words/index.js';

/** A stream a command line speaks to; what is known of it where it is a terminal. */
export type Stream = NodeJS.WritableStream & { readonly isTTY?: boolean; readonly columns?: number };

/** Where a command speaks: its streams, the language and whether the answer is for a program or a person. */
export interface Face {
  readonly language: Language;
  readonly json: boolean;
  /** The data folder as given by --data or UNDERICE_DATA; null when the default one is meant. */
  readonly dataFolder: string | null;
  /** The data folder named on this very command line. */
  readonly dataOption: string | null;
  /** Further data folders: `serve` takes several groups. */
  readonly otherFolders: readonly string[];
  readonly out: NodeJS.WritableStream;
  readonly err: NodeJS.WritableStream;
  /** Both streams are a terminal: progress may be drawn. */
  readonly interactive: boolean;
  readonly columns: number;
}

/** Prints one answer: JSON for a program, the sentences `text` makes for a person. */
export function answer(face: Face, value: unknown, text: () => string): void {
  face.out.write(face.json ? `${JSON.stringify(value, null, 2)}\n` : `${text().trimEnd()}\n`);
}

/** A command: told how to speak once the options are known, and the words for its own help. */
export interface CommandContext {
  /** @throws CommandRefused where several data folders are named and the command takes one. */
  readonly face: (several?: boolean) => Face;
  readonly end: (status: number) => void;
  readonly word: <Code extends keyof AllWords>(code: Code, figures: AllWords[Code]) => string;
}
