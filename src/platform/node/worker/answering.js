// The worker's side: one request after the other is answered, or refused with the reason.
import { parentPort } from 'node:worker_threads';

/** @typedef {import('./running.js').Reply} Reply */

/**
 * Answers what the program that started this thread or process asks.
 * @template Request, Answer
 * @param {(request: Request) => Answer | Promise<Answer>} work
 * @param {(answer: Answer) => ArrayBuffer[]} [handedOver] memory of the answer that a thread gives away instead of copying
 */
export function answering(work, handedOver = () => []) {
  /** @param {Request} request */
  const reply = async (request) => {
    try {
      const answer = await work(request);
      send({ is: 'answered', answer }, handedOver(answer));
    } catch (cause) {
      send({ is: 'refused', why: cause instanceof Error ? cause.message : String(cause) });
    }
  };
  if (parentPort === null) process.on('message', (request) => reply(/** @type {Request} */ (request)));
  else parentPort.on('message', reply);
}

/**
 * @param {Reply} reply
 * @param {ArrayBuffer[]} [handedOver]
 */
function send(reply, handedOver) {
  if (parentPort === null) process.send?.(reply);
  else parentPort.postMessage(reply, handedOver);
}
