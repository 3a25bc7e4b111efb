"""Who makes views of results; see `views`. It imports nothing, so that the package stays light."""

makers: list = []  # of functions that load whatever registers views
