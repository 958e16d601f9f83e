type Compute = (text: string) => string | Promise<string>;

/** What a page and a worker of it have. */
declare const self: {
  document?: object;
  resultsOf?: Compute;
  addEventListener(type: 'message', listener: (event: { data: string }) => void): void;
  postMessage(text: string): void;
};

/** Lets a check have a script compute: a page is called, a worker is sent to, and the same script serves both. */
export function offer(compute: Compute): void {
  if (self.document === undefined)
    self.addEventListener('message', async ({ data }) => self.postMessage(await compute(data)));
  else self.resultsOf = compute;
}
