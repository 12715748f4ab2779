/// <reference lib="dom" />
export {};
