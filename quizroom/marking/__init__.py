"""Marks: what an answer is worth, what a player has, how the standings stand.

Marks are never stored. They follow from the raw answers and the items, so that striking an
item marks the whole review anew.
"""

from quizroom.marking.answers import judge as judge
from quizroom.marking.answers import mark_of as mark_of
from quizroom.marking.answers import mark_of_order as mark_of_order
from quizroom.marking.answers import rows_right as rows_right
from quizroom.marking.model import RoomMarks as RoomMarks
from quizroom.marking.model import RoundMarks as RoundMarks
from quizroom.marking.model import Total as Total
from quizroom.marking.places import bench_standings as bench_standings
from quizroom.marking.places import place_of as place_of
from quizroom.marking.places import standings as standings
from quizroom.marking.rooms import marks_of_room as marks_of_room
from quizroom.marking.rounds import as_second as as_second
from quizroom.marking.rounds import counts as counts
