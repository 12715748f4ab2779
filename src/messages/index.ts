/** Messages: what is news, who is told of it when, how it is written and how it gets there. */
export { pictureOf } from './chart.js';
export { afterQuiet, dueFor, lastWeekly, nextWeekly } from './due.js';
export { type MailServer, mailOf, sendEmail } from './email.js';
export { CHART_ID, type Letter, letterSchema } from './letter.js';
export { Messages, type MessagesOptions, noonOf } from './messages.js';
export { type KeyedNews, type News, type NewsSource, urgencyOf } from './news.js';
export type { DeliveryRemark, Outcome } from './outcome.js';
export { type Recipient, Recipients, type Stated, type Subject, statedSchema, subjects } from './people.js';
export { Post, pauseMinutes, type Ways } from './post.js';
export { MessagesRefused } from './refused.js';
export { Round } from './round.js';
export { liftingNews } from './sources/lifting.js';
export { silenceNews } from './sources/silence.js';
export { type SpellHappening, type SpellTeller, spellNews } from './sources/spells.js';
export { stageNews } from './sources/stages.js';
export { windowNews } from './sources/windows.js';
export { sendWebhook, signatureOf } from './webhook.js';
export type { MessagesWords } from './words.js';
