/** Charts drawn on the server: SVG that prints, goes by e-mail and needs no script. */
export { numberTicks } from './axes.js';
export { type DaysChart, type DaysLine, daysChart, marksKey } from './days-chart.js';
export { type Course, type Fan, fanOf } from './fan.js';
export { type FanChart, fanChart } from './fan-chart.js';
export { type RecordChart, recordChart, type Stretch } from './record-chart.js';
export { type ScatterChart, scatterChart } from './scatter-chart.js';
export { type WaterChart, waterChart } from './water-chart.js';
