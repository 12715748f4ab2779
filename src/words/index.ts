import type { AdapterWords } from '../../adapters/index.js';
import type { WaterWords } from '../../forecasting/water.js';
import type { AutumnCautionWords } from '../autumn/index.js';
import type { KeepingWords } from '../cli/keeping-words.js';
import type { LayoutsWords } from '../cli/layouts-words.js';
import type { CliWords } from '../cli/words.js';
import type { EarlierWords } from '../earlier/index.js';
import type { FieldWords } from '../field/face-words.js';
import type { NameWords } from '../group/unknown-name.js';
import type { HindcastWords } from '../hindcast/words.js';
import type { HttpWords } from '../http/words.js';
import type { LiftingWords } from '../lifting/words.js';
import type { LoadingWords } from '../loading/index.js';
import type { MessagesWords } from '../messages/words.js';
import type { PagesWords } from '../pages/page-words.js';
import type { QualityWords } from '../quality/words.js';
import type { ClosingWords, DataWords, ReportFaceWords, ReportWords } from '../reports/words.js';
import type { SeasonWords } from '../season/index.js';
import type { SettingsWords } from '../settings/index.js';
import type { SpellsWords } from '../spells/words.js';
import type { StoreWords } from '../store/index.js';
import { adapters as adaptersEn } from './en/adapters.js';
import { autumn as autumnEn } from './en/autumn.js';
import { cli as cliEn } from './en/cli.js';
import { earlier as earlierEn } from './en/earlier.js';
import { field as fieldEn } from './en/field.js';
import { type ForecastingWords, forecasting as forecastingEn } from './en/forecasting.js';
import { formats as formatsEn } from './en/formats.js';
import { group as groupEn } from './en/group.js';
import { hindcast as hindcastEn } from './en/hindcast.js';
import { http as httpEn, settings as settingsEn } from './en/http.js';
import { keeping as keepingEn } from './en/keeping.js';
import { layouts as layoutsEn } from './en/layouts.js';
import { lifting as liftingEn } from './en/lifting.js';
import { messages as messagesEn } from './en/messages.js';
import { pageParts as pagePartsEn } from './en/page-parts.js';
import { pagesAutumn as pagesAutumnEn } from './en/pages-autumn.js';
import { pagesLifting as pagesLiftingEn } from './en/pages-lifting.js';
import { pagesMessages as pagesMessagesEn } from './en/pages-messages.js';
import { quality as qualityEn } from './en/quality.js';
import { reports as reportsEn } from './en/reports.js';
import { season as seasonEn } from './en/season.js';
import { spells as spellsEn } from './en/spells.js';
import { loading as loadingEn, store as storeEn } from './en/store.js';
import { water as waterEn } from './en/water.js';
import type { Language } from './format.js';
import { adapters as adaptersFr } from './fr/adapters.js';
import { autumn as autumnFr } from './fr/autumn.js';
import { cli as cliFr } from './fr/cli.js';
import { earlier as earlierFr } from './fr/earlier.js';
import { field as fieldFr } from './fr/field.js';
import { forecasting as forecastingFr } from './fr/forecasting.js';
import { formats as formatsFr } from './fr/formats.js';
import { group as groupFr } from './fr/group.js';
import { hindcast as hindcastFr } from './fr/hindcast.js';
import { http as httpFr, settings as settingsFr } from './fr/http.js';
import { keeping as keepingFr } from './fr/keeping.js';
import { layouts as layoutsFr } from './fr/layouts.js';
import { lifting as liftingFr } from './fr/lifting.js';
import { messages as messagesFr } from './fr/messages.js';
import { pageParts as pagePartsFr } from './fr/page-parts.js';
import { pagesAutumn as pagesAutumnFr } from './fr/pages-autumn.js';
import { pagesLifting as pagesLiftingFr } from './fr/pages-lifting.js';
import { pagesMessages as pagesMessagesFr } from './fr/pages-messages.js';
import { quality as qualityFr } from './fr/quality.js';
import { reports as reportsFr } from './fr/reports.js';
import { season as seasonFr } from './fr/season.js';
import { spells as spellsFr } from './fr/spells.js';
import { loading as loadingFr, store as storeFr } from './fr/store.js';
import { water as waterFr } from './fr/water.js';
import { frenchSpacing, named, spacedPage } from './french-spacing.js';
import { stageInEnglish, stageInFrench } from './stages.js';

export * from './citation.js';
export * from './format.js';
export { frenchSpacing, named, spacedPage };

/** Every sentence of the program. A code without words in one of the languages does not compile. */
export interface AllWords
  extends CliWords,
    LayoutsWords,
    NameWords,
    PagesWords,
    SeasonWords,
    AdapterWords,
    StoreWords,
    LoadingWords,
    ForecastingWords,
    WaterWords,
    HindcastWords,
    HttpWords,
    LiftingWords,
    MessagesWords,
    SettingsWords,
    KeepingWords,
    AutumnCautionWords,
    EarlierWords,
    FieldWords,
    QualityWords,
    SpellsWords,
    ReportWords,
    DataWords,
    ClosingWords,
    ReportFaceWords {}

type Phrases = { [Code in keyof AllWords]: (figures: AllWords[Code]) => string };

const phrases: Record<Language, Phrases> = {
  en: {
    ...cliEn,
    ...layoutsEn,
    ...groupEn,
    ...pagePartsEn,
    ...seasonEn,
    ...adaptersEn,
    ...formatsEn,
    ...storeEn,
    ...loadingEn,
    ...forecastingEn,
    ...waterEn,
    ...hindcastEn,
    ...httpEn,
    ...liftingEn,
    ...pagesLiftingEn,
    ...settingsEn,
    ...keepingEn,
    ...autumnEn,
    ...earlierEn,
    ...pagesAutumnEn,
    ...fieldEn,
    ...qualityEn,
    ...messagesEn,
    ...pagesMessagesEn,
    ...spellsEn,
    ...reportsEn,
  },
  fr: {
    ...cliFr,
    ...layoutsFr,
    ...groupFr,
    ...pagePartsFr,
    ...seasonFr,
    ...adaptersFr,
    ...formatsFr,
    ...storeFr,
    ...loadingFr,
    ...forecastingFr,
    ...waterFr,
    ...hindcastFr,
    ...httpFr,
    ...liftingFr,
    ...pagesLiftingFr,
    ...settingsFr,
    ...keepingFr,
    ...autumnFr,
    ...earlierFr,
    ...pagesAutumnFr,
    ...fieldFr,
    ...qualityFr,
    ...messagesFr,
    ...pagesMessagesFr,
    ...spellsFr,
    ...reportsFr,
  },
};

/** Puts a remark into words, in one language. */
export function say<Code extends keyof AllWords>(
  language: Language,
  remark: { readonly code: Code; readonly with: AllWords[Code] },
): string {
  return words(language, remark.code, remark.with);
}

/** Same, from a code and its figures. */
export function words<Code extends keyof AllWords>(
  language: Language,
  code: Code,
  figures: AllWords[Code],
): string {
  const sentence = phrases[language][code](figures);
  return language === 'fr' ? frenchSpacing(sentence) : sentence;
}

/** A stage's name in words; a stage of the group's own table keeps the name the table gives it. */
export function stageName(stage: string, language: Language): string {
  return language === 'fr' ? frenchSpacing(stageInFrench(stage).name) : stageInEnglish(stage).name;
}
