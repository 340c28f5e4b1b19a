"""The files that an owner types, one module for each file or large part of one."""
