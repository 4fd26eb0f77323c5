"""Formulas of the trade as plain functions of floats, the unit in every name; standard library only."""
