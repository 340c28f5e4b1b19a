"""Stage 2, measure: shapes become areas, edges and volumes."""
