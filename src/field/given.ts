import { typedFigure } from '../season/index.js';
import { type Document, isThing } from './document.js';
import { EntryWaits } from './refused.js';

/** The fields of an entry, each taken by name; what no kind asks for is a mistake and not dropped in silence. */
export class Given {
  private readonly taken = new Set<string>();

  constructor(private readonly fields: Document) {}

  /** A text or number as written, '' where there is none. */
  text(name: string): string {
    this.taken.add(name);
    const value = this.fields[name];
    if (value === undefined || value === null) return '';
    if (typeof value === 'object') throw new EntryWaits({ code: 'field-not-plain', with: { field: name } });
    return String(value).trim();
  }

  /** @throws EntryWaits where it is empty */
  must(name: string): string {
    const text = this.text(name);
    if (text === '') throw new EntryWaits({ code: 'field-missing', with: { field: name } });
    return text;
  }

  /** A number as people type it: with a decimal comma, with thousands set apart. */
  figure(name: string): string {
    return typedFigure(this.text(name));
  }

  /** Several texts; one alone, or several with commas between, will do. */
  list(name: string): string[] {
    this.taken.add(name);
    const value = this.fields[name];
    if (value === undefined || value === null || value === '') return [];
    const all = Array.isArray(value) ? value : String(value).split(',');
    return all.map((one) => String(one).trim()).filter((one) => one !== '');
  }

  /** Several things of several fields each. */
  rows(name: string): Given[] {
    this.taken.add(name);
    const value = this.fields[name];
    if (value === undefined || value === null || value === '') return [];
    if (!Array.isArray(value) || !value.every(isThing))
      throw new EntryWaits({ code: 'field-not-plain', with: { field: name } });
    return value.map((row) => new Given(row));
  }

  /** @throws EntryWaits where a field was sent that nobody asked for */
  noMore(): void {
    const left = Object.keys(this.fields).find((name) => !this.taken.has(name));
    if (left !== undefined) throw new EntryWaits({ code: 'field-unknown-field', with: { field: left } });
  }
}
