"""The content rules: each a named function; `check` tells all breaches at once."""

from quizroom.knowledge.checks.rules import LOCAL_RULES as LOCAL_RULES
from quizroom.knowledge.checks.rules import WHOLE_RULES as WHOLE_RULES
from quizroom.knowledge.checks.rules import Rule as Rule
from quizroom.knowledge.checks.rules import check as check
from quizroom.knowledge.checks.rules import rules_by_name as rules_by_name
