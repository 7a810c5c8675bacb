"""The records over HTTP. A view names its permission, reads its input, makes one call, shapes the answer."""
