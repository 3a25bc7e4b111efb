"""Who makes views of results; see `views`. It imports nothing, so that the package stays light."""

__all__ = ["makers"]

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable

makers: "list[Callable[[], None]]" = []  # of functions that load whatever registers views
