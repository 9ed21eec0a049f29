"""Problems of a procedure, one function a rule."""
