-- Writes recording.csv again as Parquet, with DuckDB 1.5. Run it in this folder.
CREATE TABLE recording AS SELECT * FROM read_csv('recording.csv', types = {'time': 'DECIMAL(12,6)', 'speed': 'DOUBLE', 'position [mm]': 'DOUBLE', 'count': 'INTEGER', 'gate': 'BOOLEAN', 'mode': 'VARCHAR'});
COPY recording TO 'duckdb.parquet' (FORMAT parquet);
COPY (SELECT TIMESTAMP '2026-03-01 06:00:00.000001' + to_microseconds((time * 1000000)::BIGINT) AS moment, "position [mm]"::FLOAT AS position, [count] AS list, 'x'::BLOB AS bytes, TIME '12:00:00' AS clock FROM recording)
  TO 'duckdb-moments.parquet' (FORMAT parquet, COMPRESSION zstd);
