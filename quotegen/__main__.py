"""Makes `python -m quotegen` the same as `quotegen`."""

from quotegen.cli import main

if __name__ == "__main__":
    main()
