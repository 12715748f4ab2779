import { open } from './field/screens.js';

void open();
