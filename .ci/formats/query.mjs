// Runs one SQL query over files in an independent engine and prints each row
// as its values, separated by tabs.
import { DuckDBInstance } from "@duckdb/node-api";

const engine = await (await DuckDBInstance.create(":memory:")).connect();
const answer = await engine.runAndReadAll(process.argv[2]);
for (const row of answer.getRowsJson()) console.log(row.join("\t"));
