import type { Group } from '../group/index.js';
import { deploymentUnder, type StationFinding } from '../group/judging/findings.js';
import { seasonEntry } from '../group/season-entries.js';
import { changing, type Kept } from '../lifting/enter.js';
import { momentAt, type Season, seasonDocument, type Verdict, verdicts } from '../season/index.js';
import { correctionAt } from '../store/corrections.js';
import { QualityRefused } from './refused.js';

type Document = Record<string, unknown>;
const DAY = 86_400_000;

/** A finding of a station by its id. @throws QualityRefused 'quality-no-finding' */
export async function findingNamed(group: Group, station: string, id: string): Promise<StationFinding> {
  const found = (await group.findings(station)).find((one) => one.id === id);
  if (found !== undefined) return found;
  throw new QualityRefused({ code: 'quality-no-finding', with: { station, finding: id } });
}

export function verdictNamed(given: string): Verdict | null {
  return verdicts.find((one) => one === given) ?? null;
}

/**
 * A person overrules what a check says of a stretch: who, when and why stay in the season. One ruling on the same
 * stretch takes the place of the one before.
 * @throws QualityRefused where there is no such finding, or no reason
 */
export async function overrule(
  group: Group,
  station: string,
  finding: string,
  { verdict, reason }: { readonly verdict: Verdict; readonly reason: string },
  who: string,
  now: number,
): Promise<Kept> {
  if (reason.trim() === '') throw new QualityRefused({ code: 'quality-no-reason', with: {} });
  const found = await findingNamed(group, station, finding);
  return changing(group, who, (season) => {
    const { zone } = season.group;
    const others = rulingsOf(season).filter((one) => one !== null && !sameRuling(season, one, found));
    const ruling = {
      station,
      quantity: found.quantity,
      check: found.kind,
      from: momentAt(found.from, zone),
      to: momentAt(found.to, zone),
      verdict,
      reason: reason.trim(),
      by: who,
      at: momentAt(now, zone),
    };
    return { ...seasonDocument(season), rulings: [...others, ruling] };
  });
}

/** Takes a ruling back: the check's word stands again. @throws QualityRefused where nobody ruled on it */
export async function withdrawRuling(
  group: Group,
  station: string,
  finding: string,
  who: string,
): Promise<Kept> {
  const found = await findingNamed(group, station, finding);
  if (found.ruling === null)
    throw new QualityRefused({ code: 'quality-no-ruling', with: { station, finding } });
  return changing(group, who, (season) => ({
    ...seasonDocument(season),
    rulings: rulingsOf(season).filter((one) => !sameRuling(season, one, found)),
  }));
}

/**
 * Takes over the correction a check offers, as the deployment's own; undone like every change of the season.
 * @throws QualityRefused where nothing is offered, or the season names no logger there
 */
export async function acceptCorrection(
  group: Group,
  station: string,
  finding: string,
  who: string,
  now: number,
): Promise<Kept> {
  const found = await findingNamed(group, station, finding);
  const { offer, kind } = found;
  if (offer === null) throw new QualityRefused({ code: 'quality-nothing-offered', with: { finding } });
  return changing(group, who, (season) => {
    const deployment = deploymentUnder(season, station, found);
    if (deployment === null) throw new QualityRefused({ code: 'quality-no-deployment', with: { station } });
    const { zone } = season.group;
    const place = season.deployments.indexOf(deployment);
    const began = Date.parse(deployment.from);
    const middle = (found.from + found.to) / 2;
    // A clock wrong from the first reading was wrong before it, too.
    const from = offer.course === 'check' ? middle : found.from - began <= 2 * DAY ? began - DAY : found.from;
    const before =
      offer.course === 'check'
        ? correctionAt(seasonEntry(season, '').deployments[place].temperature, middle)
        : 0;
    const add = offer.quantity === 'clock' ? offer.add / 1000 : before + offer.add;
    const correction = {
      quantity: offer.quantity,
      course: offer.course,
      from: momentAt(from, zone),
      to: momentAt(Math.max(from, found.to), zone),
      add: Math.round(add * 1e4) / 1e4,
      check: kind,
      by: who,
      at: momentAt(now, zone),
    };
    const document = seasonDocument(season);
    const deployments = Array.isArray(document.deployments) ? document.deployments : [];
    return {
      ...document,
      deployments: deployments.map((one: Document, i) =>
        i === place ? { ...one, corrections: [...listIn(one), correction] } : one,
      ),
    };
  });
}

function listIn(deployment: Document): readonly unknown[] {
  return Array.isArray(deployment.corrections) ? deployment.corrections : [];
}

/** The season's rulings as they are written; in their order. */
function rulingsOf(season: Season): Season['rulings'] {
  return season.rulings;
}

function sameRuling(season: Season, ruling: Season['rulings'][number], found: StationFinding): boolean {
  const standing = found.ruling;
  const start = momentAt(found.from, season.group.zone);
  return (
    ruling.station === found.station &&
    ruling.quantity === found.quantity &&
    ruling.check === found.kind &&
    (ruling.from === start ||
      (standing !== null && ruling.from === standing.from && ruling.to === standing.to))
  );
}
