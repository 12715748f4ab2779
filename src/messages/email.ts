import { createTransport } from 'nodemailer';
import { failure } from '../network/index.js';
import { pictureOf } from './chart.js';
import { CHART_ID, type Letter, oneLine } from './letter.js';
import type { Outcome } from './outcome.js';

/** The server that takes our mail. Encryption is required unless the settings say `none`. */
export interface MailServer {
  readonly host: string;
  readonly port: number;
  readonly security: 'starttls' | 'tls' | 'none';
  readonly user: string | null;
  readonly password: string | null;
  /** Whom it comes from. */
  readonly from: string;
  /** How long the server may keep us waiting for its next word. */
  readonly seconds: number;
  /** Certificates trusted beside the usual ones (PEM). */
  readonly ca?: string;
}

export interface Addressed {
  readonly name: string;
  readonly email: string;
  readonly group: string;
}

/** Sends one message by e-mail, in one conversation of its own. */
export async function sendEmail(server: MailServer, to: Addressed, letter: Letter): Promise<Outcome> {
  const { host } = server;
  const transport = createTransport({
    host,
    port: server.port,
    secure: server.security === 'tls',
    requireTLS: server.security === 'starttls',
    ignoreTLS: server.security === 'none',
    ...(server.user === null ? {} : { auth: { user: server.user, pass: server.password ?? '' } }),
    connectionTimeout: server.seconds * 1000,
    greetingTimeout: server.seconds * 1000,
    socketTimeout: server.seconds * 1000,
    disableFileAccess: true,
    disableUrlAccess: true,
    ...(server.ca === undefined ? {} : { tls: { ca: server.ca } }),
  });
  try {
    const sent = await transport.sendMail(await mailOf(server.from, to, letter));
    return {
      came: 'delivered',
      remark: { code: 'delivery-accepted', with: { answer: plain(sent.response) } },
    };
  } catch (error) {
    return outcomeOf(error, host);
  } finally {
    transport.close();
  }
}

/** The mail as it goes out: plain text and HTML, the chart inside it, links to unsubscribe at one press (RFC 8058). */
export async function mailOf(from: string, to: Addressed, letter: Letter) {
  return {
    from: { name: oneLine(to.group), address: from },
    to: { name: oneLine(to.name), address: to.email },
    subject: oneLine(letter.subject),
    messageId: letter.messageId,
    text: letter.text,
    html: letter.html,
    headers: {
      'List-Unsubscribe': `<${letter.unsubscribe}>`,
      'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click',
      'Auto-Submitted': 'auto-generated',
      'Content-Language': letter.language,
    },
    attachments:
      letter.chart === null
        ? []
        : [
            {
              filename: 'underice.png',
              cid: CHART_ID,
              contentType: 'image/png',
              contentDisposition: 'inline' as const,
              content: await pictureOf(letter.chart),
            },
          ],
  };
}

/** Permanent is only what the server says is (5yz, RFC 5321 section 4.2.1); everything else may pass. */
function outcomeOf(error: unknown, host: string): Outcome {
  const { code, responseCode, response, message } = told(error);
  const answer = plain(response || message);
  if (code === 'EAUTH') return { came: 'later', remark: { code: 'delivery-smtp-sign-in', with: { answer } } };
  if (code === 'ETLS' && /STARTTLS/i.test(message) && !/certificate/i.test(message))
    return { came: 'later', remark: { code: 'delivery-smtp-no-tls', with: { host } } };
  if (responseCode !== null && responseCode >= 500)
    return { came: 'refused', remark: { code: 'delivery-smtp-refused', with: { answer } } };
  if (responseCode !== null && responseCode >= 400)
    return { came: 'later', remark: { code: 'delivery-smtp-later', with: { answer } } };
  if (code === 'ETIMEDOUT' || /timeout/i.test(message))
    return { came: 'later', remark: { code: 'delivery-smtp-too-slow', with: { host } } };
  if (/certificate|altnames|self.signed/i.test(message))
    return { came: 'later', remark: { code: 'network-certificate', with: { host, why: answer } } };
  return { came: 'later', remark: failure(error, host).remark };
}

function told(error: unknown) {
  const given = error instanceof Error ? error : new Error(String(error));
  return {
    code: 'code' in given ? String(given.code) : '',
    responseCode:
      'responseCode' in given && typeof given.responseCode === 'number' ? given.responseCode : null,
    response: 'response' in given && typeof given.response === 'string' ? given.response : '',
    message: given.message,
  };
}

/** What a server answered, as it may be shown. */
function plain(text: string): string {
  return oneLine(text).slice(0, 200);
}
