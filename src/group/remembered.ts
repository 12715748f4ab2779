/**
 * The latest answers, as long as nothing was written since: an answer belongs to the revision at which it was asked
 * for. The same question asked again while it is being worked out waits for the same answer.
 */
export class Remembered<Answer> {
  private revision = -1;
  private readonly answers = new Map<string, Promise<Answer>>();

  constructor(private readonly most: number) {}

  of(revision: number, question: string, answer: () => Promise<Answer>): Promise<Answer> {
    if (revision !== this.revision) {
      this.answers.clear();
      this.revision = revision;
    }
    const known = this.answers.get(question);
    if (known !== undefined) {
      // The one asked for last goes last.
      this.answers.delete(question);
      this.answers.set(question, known);
      return known;
    }
    const made = answer();
    this.keep(question, made);
    return made;
  }

  /** Whether the question was asked since the last write. */
  has(revision: number, question: string): boolean {
    return revision === this.revision && this.answers.has(question);
  }

  /** An answer worked out before the revision it belongs to began. */
  begin(revision: number, question: string, made: Promise<Answer>): void {
    this.answers.clear();
    this.revision = revision;
    this.keep(question, made);
  }

  private keep(question: string, made: Promise<Answer>): void {
    this.answers.set(question, made);
    made.catch(() => {
      if (this.answers.get(question) === made) this.answers.delete(question);
    });
    const [oldest] = this.answers.keys();
    if (this.answers.size > this.most && oldest !== undefined) this.answers.delete(oldest);
  }
}
