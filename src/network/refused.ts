/** Why nothing came of asking another machine; `code` is one of `NetworkWords`. */
export type NetworkRemark = {
  [Code in keyof NetworkWords]: { readonly code: Code; readonly with: NetworkWords[Code] };
}[keyof NetworkWords];

/** What is said of another machine that was asked; the words are in src/words/<language>/messages.ts. */
export interface NetworkWords {
  /** The address lies in this machine or the network around it, and the settings do not name it. */
  'network-private': { readonly host: string; readonly address: string };
  'network-not-an-address': { readonly url: string };
  'network-unknown-host': { readonly host: string };
  'network-refused': { readonly host: string; readonly why: string };
  'network-too-slow': { readonly host: string; readonly seconds: number };
  'network-too-large': { readonly host: string; readonly bytes: number };
  'network-broken-off': { readonly host: string };
  'network-certificate': { readonly host: string; readonly why: string };
  'network-redirects': { readonly host: string; readonly to: string };
  'network-redirects-private': { readonly host: string; readonly to: string };
  'network-status': { readonly host: string; readonly status: number };
}

/** Another machine was not asked, or its answer is none. */
export class NetworkFailed extends Error {
  constructor(readonly remark: NetworkRemark) {
    super(remark.code);
    this.name = 'NetworkFailed';
  }
}
