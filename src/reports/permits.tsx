import { Figures } from '../pages/parts/figure.js';
import type { Speech } from '../pages/speech.js';
import type { ReportFigures } from './figures.js';
import { CautionList } from './season-report.js';

const dayOf = (date: string) => Date.parse(`${date}T00:00Z`) / 86_400_000;

/** What was done under each permit, for the authority that gave it. */
export function PermitTable({ figures, speech }: { figures: ReportFigures; speech: Speech }) {
  const { say } = speech;
  // A date stays on one line: the column is narrow where words are long.
  const whole = (date: string) => speech.long(dayOf(date)).replaceAll(' ', '\u00a0');
  return (
    <>
      {figures.permits.length === 0 ? (
        <p>{say('report-permits-none', {})}</p>
      ) : (
        <Figures
          caption={say('report-permits', {})}
          columns={[
            { name: say('report-col-permit', {}) },
            { name: say('report-col-authority', {}) },
            { name: say('report-col-valid', {}) },
            { name: say('report-col-site', {}) },
            { name: say('report-col-adults', {}), number: true },
            { name: say('report-col-planted', {}), number: true },
            { name: say('report-col-boxes', {}), number: true },
            { name: say('report-col-lifted', {}), number: true },
            { name: say('report-col-counted', {}), number: true },
            { name: say('column-empty', {}), number: true },
            { name: say('column-dead', {}), number: true },
            { name: say('report-col-due', {}) },
          ]}
          rows={figures.permits.map((permit) => [
            permit.number,
            permit.authority ?? '–',
            `${whole(permit.from)} – ${whole(permit.to)}`,
            permit.site ?? say('report-every-site', {}),
            speech.whole(permit.adults),
            speech.whole(permit.eggsPlanted),
            speech.whole(permit.boxesPlanted),
            speech.whole(permit.boxesLifted),
            speech.whole(permit.counted),
            speech.whole(permit.empty),
            speech.whole(permit.dead),
            permit.reportDue === null ? '–' : speech.long(dayOf(permit.reportDue)),
          ])}
        />
      )}
      <p class="small">{say('report-upper', {})}</p>
      <CautionList speech={speech} />
    </>
  );
}
