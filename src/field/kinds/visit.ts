import { added, changed, type Document, sameId, stated, things } from '../document.js';
import type { Given } from '../given.js';
import { EntryWaits } from '../refused.js';
import type { EntryKind } from './kind.js';

/** People at a site: what they read, saw, put in and took out. Loggers' deployments follow from it. */
export const visit: EntryKind = {
  kind: 'visit',
  apply(document, given, { id, who, at: entered, when }) {
    const site = given.must('site');
    const typed = given.text('when');
    const at = typed === '' ? entered : when(typed);
    const rows = given.rows('loggers').map(loggerRow);
    const present = given.list('who');
    const one = stated({
      site,
      when: at,
      who: present.length > 0 ? present : [who].filter((name) => name !== '' && name !== '-'),
      hours: given.figure('hours'),
      hand: [given.figure('celsius'), ...given.list('hand')].flatMap((celsius) =>
        celsius === '' ? [] : [{ celsius }],
      ),
      ice: given.text('ice'),
      levelM: given.figure('levelM'),
      loggers: rows.map(stated),
      photographs: given.list('photographs'),
      putBack: given.text('putBack'),
      note: given.text('note'),
      entry: id,
    });
    given.noMore();
    const station = stationOf(document, site);
    const lying = rows.reduce((now, row) => moved(now, row, at, station), document);
    return { document: added(lying, 'visits', one), became: `visit ${site} ${at}` };
  },
};

interface LoggerRow extends Document {
  readonly logger: string;
  readonly did: string;
  readonly station: string;
  readonly lay: string;
  readonly box: string;
  readonly fast: string;
  readonly iceBath: string;
}

function loggerRow(row: Given): LoggerRow {
  const read = {
    logger: row.must('logger'),
    did: row.must('did'),
    station: row.text('station'),
    lay: row.text('lay'),
    box: row.text('box'),
    fast: row.figure('fast'),
    iceBath: row.figure('iceBath'),
  };
  row.noMore();
  return read;
}

function stationOf(document: Document, site: string): string {
  return String(things(document, 'sites').find(({ id }) => sameId(id, site))?.station ?? '');
}

/** Where the logger lies after this: put in it has a new deployment, taken out its deployment has ended. */
function moved(document: Document, row: LoggerRow, at: string, usual: string): Document {
  const { logger, did, fast } = row;
  const check = fast === '' ? [] : [{ at, fast }];
  if (did === 'in') {
    const station = row.station || usual;
    if (station === '') throw new EntryWaits({ code: 'field-no-station', with: { site: logger } });
    return added(
      document,
      'deployments',
      stated({
        logger,
        station,
        lay: row.lay || (row.box === '' ? 'stream' : 'tied-to-box'),
        box: row.box,
        from: at,
        clockChecks: check,
        iceBath: stated({ before: row.iceBath }),
      }),
    );
  }
  if (did !== 'out' && did !== 'read') return document;
  const lies = (one: Document) => sameId(one.logger, logger) && one.to === undefined && one.lost !== true;
  if (!things(document, 'deployments').some(lies))
    throw new EntryWaits({ code: 'field-not-lying', with: { logger } });
  return changed(document, 'deployments', lies, (one) => {
    const checks = [...(Array.isArray(one.clockChecks) ? one.clockChecks : []), ...check];
    const read = [...(Array.isArray(one.read) ? one.read : []), ...(did === 'read' ? [at] : [])];
    const bath = typeof one.iceBath === 'object' ? one.iceBath : {};
    return stated({
      ...one,
      to: did === 'out' ? at : one.to,
      read,
      clockChecks: checks,
      iceBath: stated({ ...bath, ...(did === 'out' && row.iceBath !== '' ? { after: row.iceBath } : {}) }),
    });
  });
}
