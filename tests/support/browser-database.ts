// Components' tests run without a browser; the database of one is stood in for. Dexie looks for it
// when it is loaded, so this comes before every test file.
import 'fake-indexeddb/auto';
