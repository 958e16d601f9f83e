// Reads what a film or recording says of itself, in a thread that can be stopped. Nothing of it is played.
import { parseFile } from 'music-metadata';
import { answering } from '../../platform/node/worker/answering.js';

answering(async (/** @type {{ path: string }} */ { path }) => {
  const { format } = await parseFile(path, { duration: true, skipCovers: true, skipPostHeaders: true });
  const { container, duration, creationTime, hasVideo } = format;
  return {
    container,
    seconds: duration,
    created: creationTime instanceof Date ? creationTime.getTime() : undefined,
    hasVideo,
  };
});
