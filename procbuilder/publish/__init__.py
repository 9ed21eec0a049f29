"""From an edition to what people and machines read: page, PDF, captions, data, manifest."""
