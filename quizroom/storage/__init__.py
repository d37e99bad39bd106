"""Stores: in memory and in a relational database, under one contract."""
