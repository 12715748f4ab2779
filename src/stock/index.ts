/** How a group's own lots differ from the published tables, shrunk by how many of them say so. */
export { groupStock, type StockBeside } from './stock.js';
