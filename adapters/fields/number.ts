import type { DecimalMark } from '../download.js';
import { isDigit, type TextOf } from './bytes.js';

const powers = Float64Array.from({ length: 23 }, (_, i) => 10 ** i);

/**
 * Reads numbers with one decimal mark and no thousands out of bytes. Up to 15 digits come out correctly rounded,
 * because both the digits and the power of ten are exact doubles; the rest goes through text.
 */
export class NumberField {
  /** The number read last. */
  value = Number.NaN;
  /** Its decimals. */
  decimals = 0;
  private readonly mark: number;

  constructor(
    readonly decimal: DecimalMark,
    private readonly textOf: TextOf,
  ) {
    this.mark = decimal === ',' ? 44 : 46;
  }

  /** Whether the field is a number, which then stands in `value`. */
  read(b: Uint8Array, from: number, to: number): boolean {
    let s = from;
    let e = to;
    while (s < e && b[s] <= 32) s++;
    while (e > s && b[e - 1] <= 32) e--;
    const first = s < e ? b[s] : 0;
    let i = first === 45 || first === 43 ? s + 1 : s;
    const digitsFrom = i;
    let value = 0;
    let point = -1;
    for (; i < e; i++) {
      const c = b[i];
      if (c >= 48 && c <= 57) value = value * 10 + (c - 48);
      else if (c === this.mark && point < 0) point = i;
      else return this.fromText(b, s, e);
    }
    const digits = e - digitsFrom - (point >= 0 ? 1 : 0);
    if (digits === 0) return false;
    if (digits > 15) return this.fromText(b, s, e);
    this.decimals = point >= 0 ? e - point - 1 : 0;
    if (this.decimals > 0) value /= powers[this.decimals];
    this.value = first === 45 ? -value : value;
    return true;
  }

  /** Exponents, the real minus sign, and a unit behind the number. */
  private fromText(b: Uint8Array, s: number, e: number): boolean {
    if (!hasDigit(b, s, e) || e - s > 64) return false;
    let text = this.textOf(b, s, e)
      .replace(/^[\u2212\u2013]/, '-')
      .replace(/[\s\u00a0\u202f]*(?:[°º˚]|deg\.?)?\s*[CFK]$/i, '')
      .trim();
    if (this.decimal === ',') text = text.includes('.') ? '' : text.replace(',', '.');
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(text)) return false;
    this.decimals = 15;
    this.value = Number(text);
    return true;
  }
}

function hasDigit(b: Uint8Array, s: number, e: number): boolean {
  for (let i = s; i < e; i++) if (isDigit(b[i])) return true;
  return false;
}
