import type { Group } from '../group/index.js';
import { epochMillis, renderSeason, type Season, seasonDocument, seasonFrom } from '../season/index.js';
import { seasonId } from '../survival/index.js';
import { ReportRefused } from './refused.js';
import type { ClosingWords } from './words.js';

const DAY = 86_400_000;
/** A battery lasts about a year in cold water where its maker says nothing (ours): a new one each autumn. */
const BATTERY_DAYS = 300;

type DueCode =
  | 'next-battery'
  | 'next-memory'
  | 'next-calibration'
  | 'next-clock'
  | 'next-lost'
  | 'next-report-due'
  | 'next-permit-ends';
export type Due = { [Code in DueCode]: { readonly code: Code; readonly with: ClosingWords[Code] } }[DueCode];

/** The season after a closed one: its document, what was carried over and left, and what is due before it begins. */
export interface NextSeason {
  readonly after: string;
  readonly text: string;
  readonly carried: ClosingWords['next-carried'];
  readonly left: ClosingWords['next-left'];
  /** Names in last season's notes, most often first: who to ask again. */
  readonly people: readonly string[];
  readonly due: readonly Due[];
}

/**
 * What the next season would be; nothing is changed.
 * @throws ReportRefused 'next-not-closed' while the season in force is open
 */
export async function nextSeason(group: Group): Promise<NextSeason> {
  const season = await group.season();
  const closed = new Set((await group.closedSeasons()).map((one) => one.season));
  const after = seasonId(season);
  if (after === null || !closed.has(after))
    throw new ReportRefused({ code: 'next-not-closed', with: { season: after } });
  const people = names(season);
  return {
    after,
    text: renderSeason(seasonFrom(carriedOver(season), 'season')),
    carried: {
      sites: season.sites.length,
      stations: season.stations.length,
      loggers: kept(season).length,
      people: people.length,
    },
    left: {
      boxes: season.boxes.length,
      lots: season.lots.length,
      visits: season.visits.length,
      tallies: season.tallies.length,
      blocked: season.blocked.length,
    },
    people,
    due: due(season, await group.today()),
  };
}

/** Begins it: the closed season's document stays among the versions. */
export async function beginNext(group: Group, who: string): Promise<NextSeason> {
  const version = (await group.seasonVersions())[0]?.version ?? 0;
  const next = await nextSeason(group);
  await group.applySeason(next.text, 'season', who, version);
  return next;
}

/** Deployments stay: they say what earlier readings mean. */
function carriedOver(season: Season): Record<string, unknown> {
  return seasonDocument({
    ...season,
    broodstock: [],
    crosses: [],
    lots: [],
    boxes: [],
    visits: [],
    observed: [],
    blocked: [],
    checkedAndPutBack: [],
    tallies: [],
    entries: [],
    permits: season.permits.filter(({ to }) => to >= latest(season)),
    // A logger that lay tied to a box of last season lay at its station: the box itself is gone.
    deployments: season.deployments.map((deployment) => ({ ...deployment, box: null })),
    lifting: season.lifting === null ? null : { ...season.lifting, approved: null },
  });
}

/** Loggers that were not lost. */
function kept({ loggers, deployments }: Season): string[] {
  const lost = new Set(deployments.filter((one) => one.lost).map(({ logger }) => logger));
  return loggers.map(({ id }) => id).filter((id) => !lost.has(id));
}

/** The last day that the season's document speaks of lifting: a permit that ended before is over. */
function latest(season: Season): string {
  const days = [
    ...season.boxes.map(({ lifted }) => lifted ?? ''),
    ...season.tallies.map(({ when }) => when.date),
  ];
  return (
    days
      .map((day) => day.slice(0, 10))
      .sort()
      .at(-1) ?? ''
  );
}

function names(season: Season): string[] {
  const times = new Map<string, number>();
  const said = [
    ...season.visits.flatMap(({ who }) => who),
    ...season.boxes.flatMap(({ planting }) => planting?.who ?? []),
    ...season.tallies.flatMap(({ counter }) => counter ?? []),
  ];
  for (const name of said) times.set(name, (times.get(name) ?? 0) + 1);
  return [...times].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).map(([name]) => name);
}

function due(season: Season, today: number): Due[] {
  const there = new Set(kept(season));
  const loggers = season.loggers.flatMap((logger): Due[] => {
    if (!there.has(logger.id)) return [{ code: 'next-lost', with: { logger: logger.id } }];
    const lain = season.deployments.filter((one) => one.logger === logger.id);
    const last = lain.at(-1);
    if (last === undefined) return [];
    const since = last.from.slice(0, 10);
    const from = epochMillis(last.from) / DAY;
    const fast = last.clockChecks.at(-1)?.fast ?? null;
    const full =
      logger.memory === null || logger.interval === null || last.to !== null
        ? null
        : from + (logger.memory * logger.interval) / 1440;
    return [
      ...(today - from >= BATTERY_DAYS
        ? [{ code: 'next-battery' as const, with: { logger: logger.id, since } }]
        : []),
      ...(full === null || full > today + 365
        ? []
        : [{ code: 'next-memory' as const, with: { logger: logger.id, day: dayText(full) } }]),
      ...(last.iceBath?.after == null
        ? [
            {
              code: 'next-calibration' as const,
              with: { logger: logger.id, last: last.iceBath === null ? null : since },
            },
          ]
        : []),
      ...(fast !== null && fast !== 0
        ? [{ code: 'next-clock' as const, with: { logger: logger.id, fast } }]
        : []),
    ];
  });
  const permits = season.permits.flatMap(({ number, to, reportDue }): Due[] => [
    ...(reportDue === null ? [] : [{ code: 'next-report-due' as const, with: { number, day: reportDue } }]),
    { code: 'next-permit-ends', with: { number, day: to } },
  ]);
  return [...permits, ...loggers];
}

const dayText = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);
