"""OAuth 2 by the library, held to what is wanted here: codes with PKCE, client credentials, nothing kept in clear."""
