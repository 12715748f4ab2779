import type { Season } from '../../season/index.js';
import { Frame } from '../parts/frame.js';
import type { View } from '../view.js';

/** Empty lines for boxes that are not in the season yet. */
const SPARE = 6;

/** Sheets to take along and write on with a pencil: a sheet a site, a line a box, in the grid's order. */
export function SheetPage({ view, season }: { view: View; season: Season }) {
  const { say } = view;
  const columns = [
    'box',
    'lot',
    'eggs',
    'when',
    'unfilled',
    'doubled',
    'transportC',
    'siteC',
    'tiedTo',
    'bankMark',
  ] as const;
  return (
    <Frame
      view={view}
      title={say('page-autumn-sheet', {})}
      answer={say('page-autumn-sheet-answer', {})}
      current="autumn"
    >
      {season.sites.map((site) => (
        <section class="paper-sheet">
          <h2>{site.name ?? site.id}</h2>
          <p>{[site.access, site.find, site.bankMark].filter((one) => one !== null).join(' · ')}</p>
          <p>
            {(['when', 'who', 'celsius', 'ice', 'levelM', 'putBack'] as const).map((word) => (
              <>
                <span class="blank">{view.named(say(`face-${word}`, {}), '____________')}</span>{' '}
              </>
            ))}
          </p>
          <section class="scroll" tabindex={0} aria-label={site.name ?? site.id}>
            <table>
              <thead>
                <tr>
                  {columns.map((word) => (
                    <th scope="col">{say(`face-${word}`, {})}</th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {season.boxes
                  .filter((box) => box.site === site.id)
                  .map((box) => (
                    <tr>
                      <th scope="row">{box.id}</th>
                      {columns.slice(1).map(() => (
                        <td>&nbsp;</td>
                      ))}
                    </tr>
                  ))}
                {Array.from({ length: SPARE }, () => (
                  <tr>
                    {columns.map(() => (
                      <td>&nbsp;</td>
                    ))}
                  </tr>
                ))}
              </tbody>
            </table>
          </section>
        </section>
      ))}
    </Frame>
  );
}
