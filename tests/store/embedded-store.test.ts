import { join } from 'node:path';
import { openFolder } from '../../src/store/index.js';
import { readingStoreContract } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

readingStoreContract('embedded', () => openFolder(join(temporaryFolder(), 'season')));
