import { z } from 'zod';
import { cautions } from '../group/forecast-answer.js';
import { speech } from '../pages/speech.js';
import { languages } from '../words/format.js';
import { type Language, named } from '../words/index.js';
import { CHART_WIDTH, type Chart } from './chart.js';
import { kindOf } from './kinds/index.js';
import { type Passage, tellingIn } from './kinds/kind.js';
import type { News } from './news.js';

/** Most things a message tells one by one; of more it says how many. */
const MOST_THINGS = 12;

/** What goes out, as it was written: kept with the message, so that it is the same however often it is tried. */
export const letterSchema = z.object({
  language: z.enum(languages),
  subject: z.string(),
  text: z.string(),
  html: z.string(),
  /** The chart as SVG; the e-mail carries it as a picture. */
  chart: z.string().nullable(),
  chartTitle: z.string(),
  /** Stable over every try, so that a message that comes twice is seen to be one. */
  messageId: z.string(),
  /** What a webhook is told, as plain values. */
  news: z.array(z.unknown()),
  link: z.string(),
  unsubscribe: z.string(),
});
export type Letter = z.infer<typeof letterSchema>;

export interface LetterQuestion {
  readonly language: Language;
  readonly group: string;
  readonly name: string;
  readonly zone: string;
  readonly news: readonly News[];
  /** Sentences of the weekly summary, where there is one among the news. */
  readonly weekly: readonly string[];
  /** How a station is called. */
  readonly stationName: (station: string) => string;
  readonly chart: Chart | null;
  /** Where the person says that they have seen it, where they unsubscribe, and the season. */
  readonly link: string;
  readonly unsubscribe: string;
  readonly pages: string;
  readonly messageId: string;
}

/** Writes one message: the same in plain text and in HTML. */
export function writeLetter(question: LetterQuestion): Letter {
  const { language, group, news, chart, link, unsubscribe } = question;
  const telling = tellingIn(language, question);
  const passages = news.slice(0, MOST_THINGS).map((one) => kindOf(one).passage(one, telling));
  const { say } = speech(language);
  const head = passages[0]?.head ?? '';
  return {
    language,
    subject: oneLine(say('letter-subject', { group, head, more: news.length - 1 })),
    text: asText(question, passages),
    html: asHtml(question, passages),
    chart: chart?.svg ?? null,
    chartTitle: chart?.title ?? '',
    messageId: question.messageId,
    news: [...news],
    link,
    unsubscribe,
  };
}

/** A subject is one line: what would begin another header, or hide letters, is a space. */
export function oneLine(text: string): string {
  return text
    .replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]+/gu, ' ')
    .trim()
    .slice(0, 200);
}

function asText(
  { language, group, name, news, chart, link, unsubscribe, pages }: LetterQuestion,
  passages: readonly Passage[],
): string {
  const { say } = speech(language);
  const blocks = [
    say('letter-dear', { name }) +
      (news.length > 1 ? ` ${say('letter-several', { things: news.length })}` : ''),
    ...passages.map(({ head, says, figures, means, might }) =>
      [
        `== ${head}`,
        ...says,
        ...figures.map((figure) => `  ${named(language, figure.name, figure.value)}`),
        ...(means === null ? [] : [named(language, say('letter-means', {}), means)]),
        ...(might === null ? [] : [named(language, say('letter-might', {}), might)]),
      ].join('\n'),
    ),
    ...(news.length > passages.length
      ? [say('letter-further', { things: news.length - passages.length })]
      : []),
    ...(chart === null ? [] : [`[${chart.title}]`]),
    [say('letter-cautions', {}), ...cautions(language).map((caution) => `- ${caution}`)].join('\n'),
    `${named(language, say('letter-acknowledge', {}), link)}\n${named(language, say('letter-pages', {}), pages)}`,
    `${say('letter-why', { group })}\n${named(language, say('letter-unsubscribe', {}), unsubscribe)}`,
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** The name under which the picture is attached. */
export const CHART_ID = 'chart@underice';

const STYLE = {
  body: 'margin:0;padding:16px;background:#ffffff;color:#18272c;font:16px/1.45 sans-serif;max-width:44em',
  head: 'font-size:20px;margin:24px 0 8px',
  cell: 'padding:4px 16px 4px 0;text-align:left;vertical-align:top;border-bottom:1px solid #cdd5d6;font-weight:normal',
  button:
    'display:inline-block;padding:10px 18px;background:#0b4f5c;color:#ffffff;text-decoration:none;border-radius:4px',
  note: 'padding:8px 14px;background:#fdf3dc;margin:24px 0',
  small: 'font-size:14px;color:#4a5b62',
} as const;

function asHtml(
  { language, group, name, news, chart, link, unsubscribe, pages }: LetterQuestion,
  passages: readonly Passage[],
): string {
  const { say } = speech(language);
  const dear =
    say('letter-dear', { name }) +
    (news.length > 1 ? ` ${say('letter-several', { things: news.length })}` : '');
  const paragraph = (text: string, style = 'margin:8px 0') => `<p style="${style}">${safe(text)}</p>`;
  const strong = (label: string, text: string | null) =>
    text === null ? '' : `<p style="margin:8px 0"><strong>${safe(label)}.</strong> ${safe(text)}</p>`;
  const things = passages.map(({ head, says, figures, means, might }) => {
    const rows = figures.map(
      (figure) =>
        `<tr><th scope="row" style="${STYLE.cell};color:#4a5b62">${safe(figure.name)}</th><td style="${STYLE.cell}">${safe(figure.value)}</td></tr>`,
    );
    return [
      `<h2 style="${STYLE.head}">${safe(head)}</h2>`,
      ...says.map((sentence) => paragraph(sentence)),
      rows.length === 0 ? '' : `<table style="border-collapse:collapse">${rows.join('')}</table>`,
      strong(say('letter-means', {}), means),
      strong(say('letter-might', {}), might),
    ].join('');
  });
  const picture =
    chart === null
      ? ''
      : `<p style="margin:16px 0 4px">${safe(chart.title)}</p><img src="cid:${CHART_ID}" alt="${safe(chart.title)}" width="${CHART_WIDTH}" style="max-width:100%;height:auto">${paragraph(say('letter-chart-key', {}), STYLE.small)}`;
  return [
    `<!doctype html><html lang="${language === 'fr' ? 'fr-CA' : 'en-CA'}"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>${safe(passages[0]?.head ?? group)}</title></head>`,
    `<body style="${STYLE.body}">`,
    paragraph(dear),
    ...things,
    news.length > passages.length
      ? paragraph(say('letter-further', { things: news.length - passages.length }))
      : '',
    picture,
    `<div style="${STYLE.note}"><strong>${safe(say('letter-cautions', {}))}</strong><ul style="margin:4px 0;padding-left:20px">${cautions(
      language,
    )
      .map((caution) => `<li>${safe(caution)}</li>`)
      .join('')}</ul></div>`,
    `<p><a href="${safe(link)}" style="${STYLE.button}">${safe(say('letter-acknowledge', {}))}</a></p>`,
    `<p><a href="${safe(pages)}" style="color:#0a5566">${safe(say('letter-pages', {}))}</a></p>`,
    `<p style="${STYLE.small}">${safe(say('letter-why', { group }))} <a href="${safe(unsubscribe)}" style="color:#0a5566">${safe(say('letter-unsubscribe', {}))}</a></p>`,
    '</body></html>',
  ].join('\n');
}

/** Text as it may stand in HTML and in its attributes. */
function safe(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
    .replaceAll("'", '&#39;');
}
