import { Command } from 'commander';
import { type SiteCard, siteCards } from '../../autumn/index.js';
import { UnknownName } from '../../group/unknown-name.js';
import { closedWinters } from '../../reports/index.js';
import { percent, words } from '../../words/index.js';
import { answer, type CommandContext, type Face } from '../face.js';
import { withGroup } from '../with-group.js';

/** The sites' cards: how to get there, how to find each box, what came of it in past seasons. */
export function sitesCommand({ word, face }: CommandContext): Command {
  return new Command('sites')
    .description(word('cli-sites', {}))
    .argument('[site]', word('cli-sites-site', {}))
    .addHelpText('after', `\n${word('cli-example', { command: 'underice sites' })}`)
    .action(async (asked: string | undefined) => {
      const here = face();
      const cards = await withGroup(here, async (group) =>
        siteCards(await group.season(), await closedWinters(group)),
      );
      const sites = cards.filter(({ site }) => asked === undefined || site.id === asked);
      if (asked !== undefined && sites.length === 0)
        throw new UnknownName({
          code: 'unknown-thing',
          with: { id: asked, ids: cards.map(({ site }) => site.id) },
        });
      answer(here, { sites }, () => sites.map((card) => cardText(card, here)).join('\n\n'));
    });
}

function cardText({ site, boxes, past }: SiteCard, { language }: Face): string {
  const outs = past.flatMap(({ out }) => out ?? []);
  const said =
    outs.length === 0
      ? words(language, 'page-site-answer', { boxes: boxes.length })
      : words(language, 'page-site-answer-past', {
          boxes: boxes.length,
          seasons: outs.length,
          least: percent(language, Math.min(...outs)),
          most: percent(language, Math.max(...outs)),
        });
  const find = ({ find: where, bankMark, tiedTo }: SiteCard['boxes'][number]) =>
    [where, bankMark, tiedTo].filter((one) => one !== null).join('; ');
  return [
    site.name === null ? site.id : `${site.id}: ${site.name}`,
    `  ${said}`,
    ...[site.access, site.consent, site.find, site.bankMark].flatMap((one) =>
      one === null ? [] : [`  ${one}`],
    ),
    ...boxes.map((box) => `  - ${box.id}${find(box) === '' ? '' : `: ${find(box)}`}`),
    ...past.map(
      ({ season, boxes: counted, out }) =>
        `  ${season}: ${out === null ? '–' : percent(language, out)} (${counted})`,
    ),
  ].join('\n');
}
