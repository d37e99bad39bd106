"""`python -m tests.bench_workers [OPTIONS]`: `quizroom bench workers` over its own PostgreSQL and Redis."""

import sys

from quizroom.cli.bench_workers import bench_workers
from tests import services


def main() -> None:
    """Start both, measure, end both. Commits reach the disk, as they do in earnest."""
    cluster, redis = services.new_cluster(), services.new_redis()
    if cluster is None or redis is None:
        sys.exit(services.NO_POSTGRESQL if cluster is None else services.NO_REDIS)
    try:
        urls = ["--database-url", cluster.new_database(), "--fanout-url", redis.url]
        bench_workers.main([*urls, *sys.argv[1:]], prog_name="bench workers")
    finally:
        redis.stop()
        services.remove_cluster(cluster)


if __name__ == "__main__":
    main()
