"""numpy, loaded at its first use: the catalogue imports every module here, often for nothing.

Import `np` and `Array` from here; neither may be used while a module is being imported.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    Array = NDArray[np.float64]
    Mask = NDArray[np.bool_]
else:

    class _Later:
        def __getattr__(self, name: str) -> Any:
            import numpy

            return getattr(numpy, name)

    np = _Later()
    Array = Mask = Any

__all__ = ["Array", "Mask", "np"]
