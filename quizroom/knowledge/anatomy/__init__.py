"""Reasoning over the catalogue: joints crossed, nerve and artery trees, movers, attachments."""

from quizroom.knowledge.anatomy.attachments import attachments_at as attachments_at
from quizroom.knowledge.anatomy.attachments import attachments_on_bone as attachments_on_bone
from quizroom.knowledge.anatomy.attachments import attachments_touching as attachments_touching
from quizroom.knowledge.anatomy.attachments import site_parts as site_parts
from quizroom.knowledge.anatomy.attachments import site_wholes as site_wholes
from quizroom.knowledge.anatomy.attachments import sites_overlap as sites_overlap
from quizroom.knowledge.anatomy.crossing import joints_crossed as joints_crossed
from quizroom.knowledge.anatomy.crossing import joints_possibly_crossed as joints_possibly_crossed
from quizroom.knowledge.anatomy.crossing import joints_recorded as joints_recorded
from quizroom.knowledge.anatomy.crossing import parts_crossing as parts_crossing
from quizroom.knowledge.anatomy.movers import antagonist as antagonist
from quizroom.knowledge.anatomy.movers import movers as movers
from quizroom.knowledge.anatomy.movers import prime_movers as prime_movers
from quizroom.knowledge.anatomy.supply import PathStep as PathStep
from quizroom.knowledge.anatomy.supply import artery_ancestors as artery_ancestors
from quizroom.knowledge.anatomy.supply import artery_descendants as artery_descendants
from quizroom.knowledge.anatomy.supply import artery_path as artery_path
from quizroom.knowledge.anatomy.supply import muscles_of_artery as muscles_of_artery
from quizroom.knowledge.anatomy.supply import muscles_of_nerve as muscles_of_nerve
from quizroom.knowledge.anatomy.supply import nerve_ancestors as nerve_ancestors
from quizroom.knowledge.anatomy.supply import nerve_descendants as nerve_descendants
from quizroom.knowledge.anatomy.supply import nerve_path as nerve_path
from quizroom.knowledge.anatomy.supply import short_nerve_path as short_nerve_path
from quizroom.knowledge.anatomy.supply import supplies_of_nerve as supplies_of_nerve
