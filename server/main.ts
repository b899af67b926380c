import { environment } from './environment.js';
import { serve } from './serve.js';

await serve({ ...environment(process.env), demo: false });
