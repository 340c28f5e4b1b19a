"""The order list: each material of the job, from the takeoff and the rules of the trade."""
