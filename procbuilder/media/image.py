"""The one form in which decoded pictures travel through this room."""

import numpy as np
from numpy.typing import NDArray

Image = NDArray[np.uint8]
"""Rows by columns by blue, green, red."""
