"""Photos and logos, made small and safe."""
