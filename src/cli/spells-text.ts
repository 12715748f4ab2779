import { cautions } from '../group/forecast-answer.js';
import type { SpellRow } from '../spells/contract.js';
import { spellSentences } from '../spells/sentences.js';
import { dayAndTime, words } from '../words/index.js';
import type { Face } from './face.js';
import { paragraph } from './terminal-table.js';

/** Spells on a terminal: each with what happened, its limit and where that comes from; then the cautions. */
export function spellsText(rows: readonly SpellRow[], zone: string, { language, columns }: Face): string {
  const width = Math.min(columns, 110);
  const sentences = (all: readonly string[]) =>
    all.map((sentence) => paragraph(sentence, width, '  - ')).join('\n');
  const told = rows.map((row) => {
    const said = spellSentences(language, row, zone);
    const head = `${said.title}, ${said.severity}, ${said.state} (${row.id})`;
    const seen =
      row.acknowledged === null
        ? []
        : [
            words(language, 'page-spells-acknowledged', {
              ...row.acknowledged,
              at: dayAndTime(language, row.acknowledged.at, zone),
            }),
          ];
    return [
      `${head}\n${said.from} – ${said.to}`,
      sentences([...said.what, ...said.limit, ...said.toDo, ...seen, ...said.sources]),
    ].join('\n');
  });
  return [
    ...(told.length === 0 ? [words(language, 'cli-spells-none', {})] : told),
    paragraph(words(language, 'page-spells-plateau', {}), width),
    `${words(language, 'cli-forecast-cautions', {})}\n${sentences(cautions(language))}`,
  ].join('\n\n');
}
