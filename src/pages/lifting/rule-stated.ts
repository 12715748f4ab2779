import type { Form } from '../../http/received/form.js';
import { typedFigure } from '../../season/index.js';

/** A form's rule, levels and limits in the shape of the season file; empty fields take away what stood there. */
export function ruleStated(form: Form): Record<string, unknown> {
  const field = (name: string) => form.field(name).trim();
  const orNothing = (name: string) => (field(name) === '' ? null : field(name));
  const figureOrNothing = (name: string) => (field(name) === '' ? null : typedFigure(field(name)));
  const trips = field('trips')
    .split('\n')
    .map((line) => line.split(',').map((site) => site.trim()))
    .map((sites) => sites.filter((site) => site !== ''))
    .filter((sites) => sites.length > 0);
  const gauge = field('gauge');
  return {
    rule: orNothing('rule'),
    stillInBox: share(field('stillInBox')),
    emerged: share(field('emerged')),
    boxesADay: figureOrNothing('boxesADay'),
    stopAbove: figureOrNothing('stopAbove'),
    trips: trips.length === 0 ? null : trips,
    gauge:
      gauge === '' ? null : { station: gauge, quantity: field('quantity'), most: typedFigure(field('most')) },
  };
}

/** Per cent as a share, with a decimal comma too; what is no number goes on as it is, and the season says so. */
function share(given: string): unknown {
  if (given === '') return null;
  const number = Number(typedFigure(given));
  return Number.isFinite(number) ? number / 100 : given;
}
