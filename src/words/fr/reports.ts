import type { ClosingWords, DataWords, ReportFaceWords, ReportWords } from '../../reports/words.js';
import { decimal, list, longDay, percent, shortDay, whole, writtenDay } from '../format.js';
import { byWhom } from '../somebody.js';
import { stageInFrench } from '../stages.js';

type Phrases<Words> = { [Code in keyof Words]: (words: Words[Code]) => string };

const onDay = (date: string) => writtenDay('fr', date);
const capital = (text: string) => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
const n = (count: number) => whole('fr', count);
const day = (at: number) => longDay('fr', at);
const pc = (of: number) => percent('fr', of, of > 0 && of < 0.1 ? 1 : 0);
const between = (from: number, to: number) => `de ${pc(from)} à ${pc(to)}`;
const boxes = (count: number) => (count === 1 ? 'un incubateur' : `${n(count)} incubateurs`);
const many = (count: number, one: string, more = `${one}s`) => `${n(count)} ${count < 2 ? one : more}`;
const names = (of: readonly string[], more: number) =>
  more > 0 ? `${of.join(', ')} et ${n(more)} de plus` : list('fr', of);
const date = (at: number | null) => (at === null ? 'aucune date' : `le ${day(at)}`);
const figure = (of: number | null) => (of === null ? 'inconnu' : decimal('fr', of, of % 1 === 0 ? 0 : 1));

const kinds: Readonly<Record<string, string>> = {
  'too-warm': 'eau trop chaude',
  freezing: 'gel',
  'sudden-change': 'changement brusque',
  'too-cold': 'trop froid après la fécondation',
  exposure: 'peut-être hors de l’eau ou pris dans la glace',
  freshet: 'crue printanière',
  'break-up': 'débâcle hivernale',
  'low-water': 'basses eaux',
};
const certainties: Readonly<Record<string, string>> = {
  measured: 'mesuré',
  estimated: 'estimé',
  possible: 'possible, personne ne l’a mesuré',
};
const severities: Readonly<Record<string, string>> = {
  lethal: 'mortel',
  'lowers-survival': 'réduit la survie',
  watch: 'à surveiller',
  event: 'événement',
};

const ones: Readonly<Record<string, string>> = {
  site: 'site',
  lot: 'lot',
  parent: 'parent',
  year: 'saison',
};

/** A season without a lot of eggs has no years, and an empty folder no name (src/group/unnamed-season.ts). */
const NO_EGGS = '-';
function headed(group: string, season: string, called: string, how: string): string {
  const what = season === NO_EGGS ? `saison encore sans œufs${how}` : `${called} ${season}${how}`;
  return group === '-' ? capital(what) : `${group} : ${what}`;
}

const report: Phrases<ReportWords> = {
  'report-title': ({ group, season }) => headed(group, season, 'saison', ''),
  'report-funder-title': ({ group, season }) => headed(group, season, 'la saison', ' en une page'),
  'report-permits-title': ({ group, season }) => headed(group, season, 'la saison', ' par permis'),
  'report-made': ({ made, asOf }) => `Imprimé le ${made}; chiffres tels qu’ils étaient le ${day(asOf)}.`,
  'report-site-winters': () => 'Hivers d’un même site, saison par saison',
  'report-site-winters-note': () =>
    'Médianes sur les incubateurs d’un site; chaque épisode ou événement compté une fois, quel que soit le nombre d’incubateurs touchés. Deux hivers dont la survie diffère diffèrent par plus que ce que montre ce tableau.',
  'report-frozen': ({ by, day: at }) =>
    `Cette saison a été close le ${day(at)}${by === null ? '' : ` par ${by}`} : ses chiffres, ses tables et sa méthode sont conservés tels quels.`,
  'report-open': () => 'Cette saison n’est pas close : ses chiffres peuvent encore changer.',
  'report-short-survival': ({ share, from, to, boxes: count, seen, of }) =>
    `Au plus ${pc(share)} des œufs sont sortis de l’incubateur (${between(from, to)}) : ${n(seen)} sur ${n(of)} dans ${boxes(count)}.`,
  'report-short-few': ({ boxes: count, seen, of, lowest, highest }) =>
    `Au plus ${n(seen)} œufs sur ${n(of)} sont sortis de ${boxes(count)}; d’un incubateur à l’autre, de ${pc(lowest)} à ${pc(highest)}.`,
  'report-short-one': ({ share, from, to, seen, of }) =>
    `Au plus ${n(seen)} œufs sur ${n(of)} sont sortis du seul incubateur décompté : ${pc(share)} (${between(from, to)}).`,
  'report-short-none': () => 'Aucun incubateur n’a encore été décompté : on ne sait rien de la survie.',
  'report-upper': () =>
    'La survie tirée des compartiments vides est un maximum : un compartiment vide contenait un œuf dont l’alevin vésiculé est parti, ou qui a disparu.',
  'report-gone': ({ gone, share }) =>
    gone === 1
      ? `Un incubateur n’a pas été retrouvé. Si aucun de ses œufs n’avait survécu, ce serait ${pc(share)}.`
      : `${boxes(gone)} n’ont pas été retrouvés. Si aucun de leurs œufs n’avait survécu, ce serait ${pc(share)}.`,
  'report-not-counted': ({ boxes: of, more }) => `Non décomptés, et dans aucun chiffre : ${names(of, more)}.`,
  'report-common': () =>
    'Ce qui se dit d’habitude : de 70 à 80 % en incubateur, environ 10 % dans la nature (pratique courante, sans source). Ni l’un ni l’autre n’a été mesuré ici.',
  'report-done': () => 'Ce qui a été fait',
  'report-done-sentence': ({ boxes: count, sites, planted, lots, females, males }) =>
    `${n(planted)} œufs de ${many(lots, 'lot')} ont été mis dans ${boxes(count)} à ${many(sites, 'site')}${females + males > 0 ? `; géniteurs : ${many(females, 'femelle')} et ${many(males, 'mâle')}` : ''}.`,
  'report-people': ({ people, visits }) =>
    `${visits === 0 ? 'Aucune visite notée' : many(visits, 'visite notée', 'visites notées')}${people === 0 ? '' : `${visits === 0 ? ', mais des décomptes' : ','} avec ${people === 1 ? 'un seul nom' : many(people, 'nom différent', 'noms différents')} de personnes ou d’équipes`}.`,
  'report-hours': ({ hours, visits, of }) =>
    `${figure(hours)} ${hours < 2 ? 'heure' : 'heures'} sur les sites, d’après les ${n(visits)} visites sur ${n(of)} dont les heures ont été notées.`,
  'report-hours-none': () => 'Personne n’a noté combien d’heures les visites ont pris.',
  'report-eggs': () => 'Géniteurs et œufs',
  'report-winter': () => 'L’hiver de chaque incubateur',
  'report-winter-note': ({ freezing }) =>
    `De la mise en incubateur à la levée. Un jour au point de congélation est un jour dont la moyenne ne dépasse pas ${decimal('fr', freezing, 1)} °C (valeur du projet); des mois d’eau à 0 °C sont un hiver normal. La température n’est pas la seule chose qui tue les œufs.`,
  'report-windows': () => 'Fenêtres prévues, et ce qui est venu',
  'report-windows-note': () =>
    'Jour médian de chaque stade, tel que la prévision le donnait aux jours indiqués, avec l’intervalle censé tenir 8 fois sur 10; à la fin, le jour que donne le relevé complet. Ce jour est calculé d’après l’eau, personne ne l’a vu.',
  'report-score': ({ day: at, stages, error, bias, held }) =>
    `${day(at)} : écart moyen de ${decimal('fr', error, 1)} ${error < 2 ? 'jour' : 'jours'} sur ${many(stages, 'stade')} à venir (${Math.abs(bias) < 0.05 ? 'ni tôt ni tard' : `${decimal('fr', Math.abs(bias), 1)} ${Math.abs(bias) < 2 ? 'jour' : 'jours'} trop ${bias > 0 ? 'tard' : 'tôt'}`}); ${pc(held)} des intervalles de 80 % contenaient le jour.`,
  'report-score-none': () => 'Aucune fenêtre de ces mois ne peut encore être jugée.',
  'report-seen': () => 'Ce qu’on a vu, à côté de ce qui avait été dit',
  'report-seen-none': () => 'Rien n’a été vu ni décompté à quoi les fenêtres puissent être comparées.',
  'report-lifted-sum': ({ days, boxes: of, within, early, late }) =>
    `Alevins vésiculés encore dans ${boxes(of)} à l’ouverture, selon ${days.length === 1 ? 'la prévision du' : 'les prévisions du'} ${list(
      'fr',
      days.map((at) => shortDay('fr', at)),
    )} : ${n(within)} dans l’intervalle de 80 %, ${n(early)} en avance, ${n(late)} en retard.`,
  'report-stock': ({ table, lots, adjustment, spread, weight }) =>
    `Par rapport à la table ${table}, ${lots === 1 ? 'le lot de cette saison a' : `les ${n(lots)} lots de cette saison ont`} eu besoin de ${decimal('fr', Math.abs(adjustment) * 100, 1)} % de ${adjustment >= 0 ? 'plus' : 'moins'} du chemin, à ${decimal('fr', spread * 100, 1)} % près (un écart-type); ce que montrent les lots pèse ${pc(weight)}, la table publiée le reste.${Math.abs(adjustment) < 2 * spread ? ' Cela ne se distingue pas d’une absence de différence.' : ''}`,
  'report-stock-none': () =>
    'Aucun stade n’a été décompté dans un lot cette saison : on ne peut rien dire de l’écart entre ce stock et sa table.',
  'report-stock-lifting': () =>
    'Les décomptes à la levée ne font que borner l’éclosion, et seulement si les œufs vivants y sont distingués des alevins vésiculés; ils ne disent rien ici.',
  'report-spells': () => 'Épisodes et événements',
  'report-spells-none': () => 'Aucun épisode n’a été trouvé.',
  'report-spells-not-judged': () =>
    'Les épisodes n’ont pas été jugés pour ce rapport : s’il n’y en a pas ici, cela ne veut pas dire qu’il n’y en a pas eu.',
  'report-spell': ({ kind, from, to, hours, peak, boxes: of, certainty, severity }) =>
    `${capital(kind)}, ${from === to ? `le ${shortDay('fr', from)}` : `du ${shortDay('fr', from)} au ${shortDay('fr', to)}`}, ${n(hours)} h${peak === null ? '' : `, jusqu’à ${decimal('fr', peak, 1)} °C`} : ${of.join(', ')} (${severity}; ${certainty}).`,
  'report-lifting': () => 'Levée',
  'report-lifting-none': () => 'Aucun incubateur n’a été levé.',
  'report-lifting-day': ({ day: at, boxes: of, more }) => `${day(at)} : ${names(of, more)}.`,
  'report-lifting-out': ({ boxes: of, more }) => `Encore dans l’eau : ${names(of, more)}.`,
  'report-lifting-approved': ({ by, days }) =>
    `Approuvé par ${byWhom('fr', by)} : ${list(
      'fr',
      days.map((at) => shortDay('fr', at)),
    )}.`,
  'report-survival': () => 'Survie',
  'report-survival-boxes': () => 'Incubateur par incubateur',
  'report-survival-groups': () => 'Plusieurs incubateurs ensemble',
  'report-survival-chart': () => 'Sortis de l’incubateur, au plus, chacun avec son intervalle de 95 %',
  'report-survival-chart-common': () =>
    'La bande ombrée est ce qui se dit d’habitude des incubateurs, de 70 à 80 % (pratique courante).',
  'report-share': ({ share, from, to }) => `${pc(share)} (${between(from, to)})`,
  'report-share-of': ({ share, from, to, seen, of }) =>
    `${n(seen)} sur ${n(of)} : ${pc(share)} (${between(from, to)})`,
  'report-range': ({ seen, of, lowest, highest }) =>
    `${n(seen)} sur ${n(of)}; incubateurs de ${pc(lowest)} à ${pc(highest)}`,
  'report-stage-range': ({ lower, upper }) =>
    pc(lower) === pc(upper) ? `${pc(upper)}` : `${pc(lower)} à ${pc(upper)}`,
  'report-counting-error': ({ eggs }) =>
    `Deux décomptes du même incubateur diffèrent de ${decimal('fr', eggs, 1)} œufs (un écart-type d’un décompte) : l’intervalle de chaque incubateur en est élargi.`,
  'report-compare': () => 'Ce que les chiffres peuvent dire, et ce qu’ils ne peuvent pas',
  'report-compare-none': () => 'Rien ne peut encore être comparé.',
  'report-compare-apart': ({ higher, lower, pairs, corrected }) =>
    `Il en est sorti davantage à ${higher} qu’à ${lower} (p ${corrected < 0.001 ? '< 0,001' : `= ${decimal('fr', corrected, 3)}`}, corrigé pour ${many(pairs, 'comparaison')}).`,
  'report-compare-no-order': ({ by, names: of, more, others }) =>
    others
      ? `Pour les autres paires (${by} : ${names(of, more)}), aucun ordre ne peut être donné : leurs intervalles se recouvrent, ou la différence peut venir du hasard.`
      : `Entre les ${by} ${names(of, more)}, aucun ordre ne peut être donné : leurs intervalles se recouvrent, ou la différence peut venir du hasard.`,
  'report-group': ({ by, name }) => `${ones[by] ?? by} ${name}`,
  'report-compare-not-possible': ({ by }) =>
    `Les ${by} ne peuvent pas être comparés : quand chacun n’a qu’un incubateur, rien ne dit de combien les incubateurs diffèrent d’eux-mêmes.`,
  'report-site-is-lot': () =>
    'Chaque lot ne se trouvait qu’à un site : on ne peut pas dire si c’est l’endroit ou les œufs qui ont compté. La saison prochaine, mettez chaque lot à deux sites ou plus.',
  'report-few-at-site': ({ sites, more }) =>
    `Deux incubateurs à un même site, ou un seul, ne permettent pas de distinguer le site du lot, ni un mauvais endroit d’un mauvais jour (${names(sites, more)}).`,
  'report-years': () => 'À côté des saisons passées',
  'report-years-none': () => 'Il n’y a aucune saison passée avec des décomptes à mettre à côté de celle-ci.',
  'report-year-source-tallies': () => 'décomptes de cette saison',
  'report-year-source-closed': () => 'saison close',
  'report-year-source-table': () => 'tableau de saisons passées',
  'report-methods': () => 'Méthodes et sources',
  'report-method-version': ({ method }) => `Méthode ${n(method)} de ce rapport.`,
  'report-method-wilson': () =>
    'Un incubateur : intervalle de Wilson à 95 % (Wilson 1927; Newcombe 1998, Statistics in Medicine 17:857-872).',
  'report-method-groups': () =>
    'Plusieurs incubateurs : logit quasi binomial avec t sous vingt incubateurs (McCullagh et Nelder 1989), loi bêta-binomiale par maximum de vraisemblance au-delà (Crowder 1978, Applied Statistics 27:34-37). Les deux tiennent compte d’incubateurs qui diffèrent plus que par hasard; avec deux ou trois, les décomptes et l’étendue en disent davantage.',
  'report-method-compare': () =>
    'Comparaisons : chaque paire, corrigée selon Holm (1979, Scandinavian Journal of Statistics 6:65-70).',
  'report-method-fertilised': () =>
    'Parmi les œufs fécondés : divisé par le taux de fécondation de l’échantillon témoin, dont l’erreur est reportée (Abbott 1925; Katz et coll. 1978 : de mémoire tous les deux).',
  'report-method-windows': () =>
    'Fenêtres : somme des vitesses jour par jour sur l’eau mesurée, comblée et projetée; la méthode est dans docs/forecast-method.md.',
  'report-method-sources': ({ table }) => `Sources de la table ${table}`,
  'report-map': () => 'Où',
  'report-map-coarse': () =>
    'Sites d’après leurs coordonnées, arrondies à une dizaine de kilomètres : l’endroit où se trouvent les poissons sauvages ne regarde pas tout le monde.',
  'report-map-exact': () =>
    'Sites d’après leurs coordonnées. Réfléchissez avant de transmettre cette page : l’endroit où se trouvent les poissons sauvages ne regarde pas tout le monde.',
  'report-map-none': () => 'Aucun site n’indique ses coordonnées.',
  'report-permits': () => 'Par permis',
  'report-permits-none': () => 'Aucun permis n’est noté pour cette saison.',
  'report-funder-did': () => 'Ce que nous avons fait',
  'report-funder-came': () => 'Ce que cela a donné',
  'report-funder-sites': ({ shown, of }) =>
    `Sites dessinés : les ${n(shown)} premiers sur ${n(of)}; le rapport de saison les a tous.`,
  'report-funder-honest': () => 'Ce que cela ne dit pas',
  'report-funder-windows': ({ error, day: at }) =>
    `Les dates des stades prévues au ${day(at)} étaient justes à ${decimal('fr', error, 1)} ${error < 2 ? 'jour' : 'jours'} près, en moyenne.`,
  'report-by-all': () => 'tous',
  'report-by-site': () => 'sites',
  'report-by-lot': () => 'lots',
  'report-by-parent': () => 'parents',
  'report-by-year': () => 'saisons',
  'report-measure-stage': ({ stage }) => `jusqu’${stageInFrench(stage).to}, au plus`,
  'report-measure-out': () => 'sortis de l’incubateur, au plus',
  'report-col-lot': () => 'lot',
  'report-col-fertilised': () => 'fécondation',
  'report-col-parents': () => 'parents',
  'report-col-eggs': () => 'œufs',
  'report-col-planted': () => 'mis en incubateur',
  'report-col-control': () => 'échantillon témoin',
  'report-col-units': () => 'degrés-jours',
  'report-col-freezing': () => 'jours au point de congélation',
  'report-col-range': () => 'moyennes journalières, °C',
  'report-col-site': () => 'site',
  'report-col-boxes': () => 'incubateurs',
  'report-col-spells': () => 'épisodes',
  'report-col-exposures': () => 'expositions',
  'report-col-gauge': () => 'événements au limnimètre',
  'report-col-silt': () => 'limon, mm',
  'report-col-depth': () => 'profondeur, m',
  'report-col-days': () => 'jours mesurés / comblés / projetés',
  'report-col-record': () => 'd’après le relevé',
  'report-col-measure': () => 'jusqu’où',
  'report-col-with-gone': () => 'avec les incubateurs non retrouvés',
  'report-col-found': () => 'incubateurs retrouvés',
  'report-col-group': () => 'lequel',
  'report-col-season': () => 'saison',
  'report-col-source': () => 'provenance',
  'report-col-permit': () => 'permis',
  'report-col-authority': () => 'autorité',
  'report-col-valid': () => 'valide',
  'report-col-due': () => 'rapport dû',
  'report-col-adults': () => 'adultes',
  'report-col-lifted': () => 'incubateurs levés',
  'report-col-counted': () => 'décomptés',
  'report-col-of-fertilised': () => 'parmi les fécondés',
  'report-box-gone': () => 'non retrouvé',
  'report-every-site': () => 'tous les sites',
  'report-kind': ({ kind }) => kinds[kind] ?? kind,
  'report-certainty': ({ certainty }) => certainties[certainty] ?? certainty,
  'report-severity': ({ severity }) => severities[severity] ?? severity,
};

const data: Phrases<DataWords> = {
  'data-title': ({ group, season }) => `${group}, saison ${season} : survie et hiver de chaque incubateur`,
  'data-about': () =>
    'Décomptes et chiffres d’une saison. La survie tirée des compartiments vides est un maximum. Aucune coordonnée n’est donnée. Les dates sont locales, les parts vont de 0 à 1, une case vide n’est pas connue.',
  'data-boxes': () => 'Ce qui a été décompté dans chaque incubateur ou partie d’incubateur',
  'data-groups': () => 'Survie de plusieurs incubateurs ensemble, avec intervalles de 95 %',
  'data-winters': () => 'L’hiver de chaque incubateur, de la mise en incubateur à la levée',
  'data-windows': () => 'Jours médians des stades tels que prévus, et d’après le relevé complet',
  'data-spells': () => 'Suites d’eau dommageable et événements',
  'data-lots': () => 'Œufs fécondés ensemble',
  'data-years': () => 'Survie hors de l’incubateur par saison',
  'data-permits': () => 'Ce qui a été fait sous chaque permis',
  'data-season': () => 'Saison : années de la fécondation et de la levée',
  'data-box': () => 'Incubateur, comme le groupe le nomme',
  'data-part': () => 'Partie de l’incubateur; vide si le tout a été décompté',
  'data-site': () => 'Site, comme le groupe le nomme',
  'data-lot': () => 'Lot; vide si plusieurs se trouvaient ensemble',
  'data-planted': () => 'Œufs mis en incubateur, ou décomptés si davantage ont été décomptés',
  'data-found': () => 'Si l’incubateur a été retrouvé',
  'data-empty': () => 'Compartiments vides : partis ou disparus; moyenne si plusieurs ont décompté',
  'data-dead': () => 'Œufs et alevins vésiculés morts; moyenne si plusieurs ont décompté',
  'data-alive': () =>
    'Œufs et alevins vésiculés vivants encore dans l’incubateur; moyenne si plusieurs ont décompté',
  'data-counters': () => 'Personnes qui ont décompté',
  'data-share': () => 'Part arrivée jusque-là, un maximum',
  'data-from': () => 'Borne inférieure de l’intervalle de 95 % de la part',
  'data-to': () => 'Borne supérieure de l’intervalle de 95 % de la part',
  'data-of-fertilised': () => 'Part des œufs que l’échantillon témoin montre fécondés',
  'data-at-least': ({ stage }) => `Œufs arrivés à coup sûr au stade : ${stage}`,
  'data-at-most': ({ stage }) => `Œufs peut-être arrivés au stade : ${stage}`,
  'data-by': () => 'Ce qui réunit les incubateurs : all (tous), site, lot, parent ou year (saison)',
  'data-name': () => 'Lequel; vide pour tous les incubateurs',
  'data-measure': () => 'Jusqu’où : eye-up (œuf œillé), hatch (éclosion) ou out (hors de l’incubateur)',
  'data-group-boxes': () => 'Incubateurs retrouvés et décomptés',
  'data-gone': () => 'Incubateurs ou parties non retrouvés',
  'data-seen': () => 'Œufs arrivés jusque-là, au plus',
  'data-of': () => 'Œufs mis dans ces incubateurs',
  'data-method': () => 'Comment l’intervalle a été calculé',
  'data-lowest': () => 'Part la plus basse d’un incubateur',
  'data-highest': () => 'Part la plus haute d’un incubateur',
  'data-share-with-gone': () => 'Part si les incubateurs non retrouvés comptent comme œufs non survivants',
  'data-units': () => 'Degrés-jours au-dessus de la base de la table, du lot le plus nombreux',
  'data-freezing': () => 'Jours dont la moyenne ne dépasse pas 0,2 °C',
  'data-coldest': () => 'Moyenne journalière la plus basse',
  'data-warmest': () => 'Moyenne journalière la plus haute',
  'data-measured': () => 'Jours mesurés',
  'data-filled': () => 'Jours comblés d’après d’autres stations',
  'data-projected': () => 'Jours projetés',
  'data-spell-count': () => 'Épisodes de température dommageable',
  'data-spell-hours': () => 'Heures de ces épisodes',
  'data-exposures': () => 'Fois où l’incubateur était peut-être hors de l’eau ou pris dans la glace',
  'data-gauge': () => 'Événements au limnimètre : crues, débâcles, basses eaux',
  'data-depth': () => 'Profondeur de l’eau',
  'data-velocity': () => 'Vitesse de l’eau',
  'data-silt': () => 'Limon dans l’incubateur à la levée; moyenne si plusieurs ont mesuré',
  'data-stage': () => 'Stade des œufs',
  'data-as-of': () => 'Jour où la prévision était telle',
  'data-p10': () => 'Jour médian, début de l’intervalle de 80 %',
  'data-p50': () => 'Jour médian',
  'data-p90': () => 'Jour médian, fin de l’intervalle de 80 %',
  'data-by-record': () => 'Jour médian d’après le relevé complet de l’eau; calculé, non vu',
  'data-spell': () => 'Le nom propre de l’épisode',
  'data-kind': () => 'De quelle sorte',
  'data-severity': () =>
    'Gravité : lethal (mortel), lowers-survival (réduit la survie), watch (à surveiller) ou event (événement)',
  'data-certainty': () => 'measured (mesuré), estimated (estimé) ou possible',
  'data-spell-from': () => 'Quand il a commencé',
  'data-spell-to': () => 'Quand il a fini',
  'data-hours': () => 'Combien de temps',
  'data-peak': () => 'Température la plus éloignée',
  'data-spell-boxes': () => 'Incubateurs touchés, séparés par des espaces',
  'data-fertilised': () => 'Jour de la fécondation',
  'data-parents': () => 'Parents tels que le groupe les numérote, séparés par des espaces',
  'data-eggs': () => 'Œufs fécondés',
  'data-lot-planted': () => 'Œufs mis en incubateur',
  'data-counted-how': () => 'Comment les œufs ont été comptés',
  'data-table': () => 'Table de développement',
  'data-control-fertilised': () => 'Œufs fécondés de l’échantillon témoin',
  'data-control-of': () => 'Œufs examinés de l’échantillon témoin',
  'data-year-source': () =>
    'Provenance : tallies (décomptes), closed (saison close), table (tableau de saisons passées)',
  'data-permit': () => 'Numéro du permis',
  'data-authority': () => 'Autorité',
  'data-valid-from': () => 'Premier jour de validité',
  'data-valid-to': () => 'Dernier jour de validité',
  'data-due': () => 'Jour où le rapport à l’autorité est dû',
  'data-adults': () => 'Adultes prélevés',
  'data-permit-planted': () => 'Œufs mis en incubateur sous ce permis',
  'data-permit-boxes': () => 'Incubateurs posés sous ce permis',
  'data-permit-lifted': () => 'Incubateurs levés sous ce permis',
  'data-permit-counted': () => 'Compartiments décomptés',
};

const closing: Phrases<ClosingWords> = {
  'close-twice': ({ season, by, day: at }) =>
    `La saison ${season} a été close le ${at} par ${byWhom('fr', by)} : elle n’est close qu’une fois et reste telle quelle. Préparez-en la saison suivante.`,
  'close-boxes-out': ({ boxes: of, more }) =>
    `La saison ne peut être close tant que des incubateurs sont dans l’eau : ${names(of, more)}. Décomptez-les, ou notez-les comme non retrouvés.`,
  'close-no-tally': () =>
    'La saison n’a aucun décompte : il n’y a rien sur quoi la clore. Décomptez un incubateur, ou notez-le comme non retrouvé.',
  'close-no-eggs': () => 'La saison n’a aucun lot d’œufs : il n’y a rien à clore.',
  'close-unknown': ({ season, seasons }) =>
    `Il n’y a pas de saison ${season}. Il y a : ${seasons.join(', ')}.`,
  'close-moved': () =>
    'La saison a changé pendant la clôture : rien n’a été conservé. Recommencez la clôture.',
  'report-unwritable': ({ file }) =>
    `Impossible d’écrire ${file} : nommez avec --out un dossier où vous pouvez écrire.`,
  'close-done': ({ season }) =>
    `La saison ${season} est close. Ses chiffres, ses tables et ses rapports sont conservés tels quels, quoi qu’on charge ensuite.`,
  'close-listed': ({ season, by, day: at }) => `${season} : close le ${at} par ${byWhom('fr', by)}`,
  'close-listed-none': () => 'Aucune saison n’a été close.',
  'late-none': () => 'Rien de ce qui a été chargé depuis ne changerait ses chiffres.',
  'late-some': ({ changes }) =>
    `Ce qui a été chargé depuis aurait changé ${many(changes, 'chiffre')}; la saison close reste telle quelle.`,
  'late-units': ({ box, was, now }) => `${box} : ${figure(now)} degrés-jours au lieu de ${figure(was)}.`,
  'late-freezing': ({ box, was, now }) =>
    `${box} : ${figure(now)} jours au point de congélation au lieu de ${figure(was)}.`,
  'late-stage': ({ box, lot, stage, was, now }) =>
    `${box}, lot ${lot} : ${stageInFrench(stage).name}, ${date(now)} d’après le relevé; dans la saison close, ${date(was)}.`,
  'next-not-closed': ({ season }) =>
    season === null
      ? 'La saison n’a encore aucun lot d’œufs : la suivante ne prend sa place qu’une fois celle-ci close.'
      : `Il faut d’abord clore la saison ${season} : la suivante prend sa place.`,
  'next-made': ({ season }) => `La saison qui suit ${season} est prête : planifiez-la d’ici.`,
  'next-preview': ({ season }) => `Voici ce que serait la saison qui suit ${season}; rien n’a changé.`,
  'next-carried': ({ sites, stations, loggers, people }) =>
    `Repris : ${many(sites, 'site')}, ${many(stations, 'station')}, ${many(loggers, 'enregistreur')}; ${many(people, 'nom')} dans les notes de la saison passée.`,
  'next-left': ({ boxes: count, lots, visits, tallies, blocked }) =>
    `Laissés à la saison close : ${list('fr', [
      boxes(count),
      many(lots, 'lot'),
      many(visits, 'visite'),
      many(tallies, 'décompte'),
      ...(blocked === 0
        ? []
        : [many(blocked, 'inscription de jours exclus', 'inscriptions de jours exclus')]),
    ])}.`,
  'next-battery': ({ logger, since }) =>
    `${logger} : nouvelle pile; il est à l’eau depuis le ${onDay(since)}.`,
  'next-memory': ({ logger, day: at }) => `${logger} : sa mémoire sera pleine le ${onDay(at)}.`,
  'next-calibration': ({ logger, last }) =>
    last === null
      ? `${logger} : bain de glace; aucun n’est noté.`
      : `${logger} : bain de glace; le dernier datait de la mise à l’eau du ${onDay(last)}.`,
  'next-clock': ({ logger, fast }) =>
    `${logger} : réglez son horloge; elle ${fast > 0 ? 'avançait' : 'retardait'} de ${n(Math.abs(fast))} s.`,
  'next-lost': ({ logger }) => `${logger} : perdu, et non repris.`,
  'next-report-due': ({ number, day: at }) => `Permis ${number} : rapport dû le ${onDay(at)}.`,
  'next-permit-ends': ({ number, day: at }) =>
    `Permis ${number} : son dernier jour est le ${onDay(at)}; demandez le suivant.`,
  'next-nothing-due': () => 'Rien n’est dû.',
};

const face: Phrases<ReportFaceWords> = {
  'page-nav-survival': () => 'Survie',
  'page-nav-report': () => 'Rapport',
  'page-report-which': () => 'Quelle saison',
  'page-report-current': ({ season }) => `${season}, en cours`,
  'page-report-closed': ({ season }) => `${season}, close`,
  'page-report-funder': () => 'Une page pour un bailleur de fonds',
  'page-report-permits': () => 'Par permis',
  'page-report-survival': () => 'Survie',
  'page-report-season': () => 'Rapport de saison',
  'page-report-file': ({ file }) => file,
  'page-report-files': () => 'En fichiers',
  'page-report-map': () => 'Carte',
  'page-report-map-coarse': () => 'grossière',
  'page-report-map-exact': () => 'exacte',
  'page-report-map-none': () => 'aucune',
  'page-report-close': () => 'Clore la saison',
  'page-report-close-what': () =>
    'La clôture conserve chaque chiffre, chaque table et chaque rapport tels quels, pour qu’on puisse les réimprimer dans des années. Elle ne s’annule pas.',
  'page-report-close-by': () => 'Close par (nommé dans le rapport)',
  'page-report-close-do': ({ season }) => `Clore la saison ${season}`,
  'page-report-late': () => 'Ce qui est arrivé tard',
  'page-report-next': () => 'Saison suivante',
  'page-report-next-answer': ({ season, due }) =>
    `La saison qui suit ${season} peut commencer; ${due === 0 ? 'rien n’est dû avant' : `${many(due, 'chose')} à faire avant`}.`,
  'page-report-next-close': () =>
    'Une saison se clôt au pied de son rapport, une fois que chaque incubateur est décompté, ou noté comme non retrouvé.',
  'page-report-next-people': () => 'Qui était là la saison passée',
  'page-report-next-what': () =>
    'Les sites, les stations, les enregistreurs et les tables sont repris; les incubateurs, les lots, les visites et les décomptes restent à la saison close.',
  'page-report-next-do': ({ season }) => `Commencer la saison qui suit ${season}`,
  'page-report-next-due': () => 'À faire d’ici là',
  'page-report-next-text': () => 'Le fichier de saison qui en résulterait',
  'page-survival-title': ({ season }) =>
    season === NO_EGGS ? 'Survie : pas encore d’œufs cette saison' : `Survie, saison ${season}`,
  'cli-report': () => 'écrire le rapport de la saison en HTML, en CSV et en paquet de données',
  'cli-report-season': () => 'une saison close, comme 2024-2025 (sinon, celle en cours)',
  'cli-report-out': () => 'le dossier où l’écrire',
  'cli-report-map': () => 'dessiner une carte des sites : coarse (une dizaine de kilomètres) ou exact',
  'cli-report-written': ({ folder, files }) => `Écrit dans ${folder} : ${files.join(', ')}.`,
  'cli-survival': () => 'ce qui a survécu, par incubateur, site, lot, parent et saison',
  'cli-season-close': () => 'clore la saison : ses chiffres et ses rapports sont conservés tels quels',
  'cli-season-closed': () => 'énumérer les saisons closes',
  'cli-season-late': () => 'ce qui a été chargé depuis la clôture, et ce que cela aurait changé',
  'cli-season-next': () => 'préparer la saison suivante à partir de la saison close',
  'cli-season-close-by': () => 'qui la clôt, comme le rapport doit le nommer; personne si ce n’est pas donné',
  'cli-season-id': () => 'une saison, comme 2024-2025',
};

export const reports: Phrases<ReportWords & DataWords & ClosingWords & ReportFaceWords> = {
  ...report,
  ...data,
  ...closing,
  ...face,
};
