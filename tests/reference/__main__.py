"""`python3 -m tests.reference`: how the content stands to outside tables of facts, as a table of counts."""

import sys

from quizroom import bootstrap

if __name__ == "__main__":
    if not bootstrap.is_at_home():
        bootstrap.hand_over("tests.reference", sys.argv[1:], extra="test")
    from tests.reference.counts import counts
    from tests.reference.print import as_text
    from tests.shipped import content

    sys.stdout.write(as_text(counts(content())) + "\n")
