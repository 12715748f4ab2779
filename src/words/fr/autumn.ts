import type { AutumnCautionWords } from '../../autumn/index.js';
import { decimal, longDay, whole } from '../format.js';

const DAY = 86_400_000;
const day = (at: number) => longDay('fr', at / DAY).replace(/^1 /, '1er ');
const degrees = (celsius: number) => `${decimal('fr', celsius, 1)} °C`;

export const autumn: { [Code in keyof AutumnCautionWords]: (figures: AutumnCautionWords[Code]) => string } = {
  'autumn-handle-soon': ({ lot, hours, hoursLeft }) =>
    `Le lot ${lot} a été fécondé il y a ${whole('fr', Math.round(hours))} h : dans environ ${whole('fr', Math.floor(hoursLeft))} h, il entre dans la période où une manipulation tue les œufs. Mettez-le en incubateur avant, ou n’y touchez plus jusqu’au stade œillé.`,
  'autumn-must-not-handle': ({ lot, hours }) =>
    `Le lot ${lot} a été fécondé il y a ${whole('fr', Math.round(hours))} h et se trouve dans la période où une manipulation tue les œufs : ne le déplacez pas. Consultez la personne biologiste responsable.`,
  'autumn-temper': ({ transportC, siteC, limit }) =>
    `L’eau de transport est à ${degrees(transportC)} et le site à ${degrees(siteC)} : plus de ${degrees(limit)} d’écart. Amenez lentement les œufs à la température du site avant de les y mettre.`,
  'autumn-logger-full': ({ logger, full, lifted, memory, interval }) =>
    `La mémoire de l’enregistreur ${logger} sera pleine le ${day(full)}, avant la levée (${day(lifted)}) : elle contient ${whole('fr', memory)} lectures, une toutes les ${whole('fr', interval)} minutes. Choisissez maintenant un intervalle plus long, ou lisez-le et relancez-le avant ce jour.`,
  'autumn-cold-start': ({ siteC, limit }) =>
    `Le site est à ${degrees(siteC)}. Les œufs qui commencent sous ${degrees(limit)} juste après la fécondation se perdent plus souvent : c’est un conseil, pas une alarme ; consultez la personne biologiste responsable.`,
};
