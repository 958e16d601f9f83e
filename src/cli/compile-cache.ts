import module from 'node:module';
import { homedir } from 'node:os';
import { join } from 'node:path';

/**
 * Keeps compiled code between runs where Node does that (22.1 and later), in the user's own folder: what lies in a folder
 * that everyone may write to would be run. NODE_COMPILE_CACHE names another folder, NODE_DISABLE_COMPILE_CACHE=1 none.
 */
export function keepCompiledCode(): void {
  const enable: unknown = Reflect.get(module, 'enableCompileCache');
  if (typeof enable !== 'function' || process.env.NODE_COMPILE_CACHE !== undefined) return;
  enable(join(userCache(), 'load-dossier'));
}

function userCache(): string {
  switch (process.platform) {
    case 'win32':
      return process.env.LOCALAPPDATA ?? join(homedir(), 'AppData', 'Local');
    case 'darwin':
      return join(homedir(), 'Library', 'Caches');
    default:
      return process.env.XDG_CACHE_HOME ?? join(homedir(), '.cache');
  }
}
