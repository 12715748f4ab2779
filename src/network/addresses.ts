import ipaddr from 'ipaddr.js';
import { NetworkFailed } from './refused.js';

/** Hosts, addresses and ranges (10.1.0.0/16) of the network around that the settings name. */
export type NamedAddresses = readonly string[];

/**
 * Whether an address may be asked: one that every network leads to, or one that the settings name. Loopback,
 * link-local, private, shared and reserved ranges are this machine's surroundings (IANA special-purpose registries, as
 * ipaddr.js holds them), also where an IPv6 address only wraps them.
 */
export function mayAsk(address: string, host: string, named: NamedAddresses): boolean {
  if (!ipaddr.isValid(address)) return false;
  const plain = ipaddr.process(address);
  if (plain.range() === 'unicast') return true;
  return named.some((name) => name === host || name === address || inRange(plain, name));
}

function inRange(address: ipaddr.IPv4 | ipaddr.IPv6, range: string): boolean {
  if (!ipaddr.isValidCIDR(range)) return false;
  const [net, bits] = ipaddr.parseCIDR(range);
  return net.kind() === address.kind() && address.match(net, bits);
}

/** A host as an address bar holds it, without the brackets of IPv6. */
export function hostOf({ hostname }: URL): string {
  return hostname.replace(/^\[|\]$/g, '');
}

/** The address itself, where a URL names one in place of a host. @throws NetworkFailed 'network-private' */
export function refusePrivate(url: URL, named: NamedAddresses): void {
  const host = hostOf(url);
  if (ipaddr.isValid(host) && !mayAsk(host, host, named))
    throw new NetworkFailed({ code: 'network-private', with: { host, address: host } });
}

/** @throws NetworkFailed where it is no http or https address, or carries a password. */
export function addressOf(text: string): URL {
  const url = URL.canParse(text) ? new URL(text) : null;
  const takes = url !== null && /^https?:$/.test(url.protocol) && url.username === '' && url.password === '';
  if (!takes || url === null)
    throw new NetworkFailed({ code: 'network-not-an-address', with: { url: text.slice(0, 200) } });
  return url;
}
