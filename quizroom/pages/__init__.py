"""Pages: small HTML frames that the browser's side fills, and what they need besides."""
