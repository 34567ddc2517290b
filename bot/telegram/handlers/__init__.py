"""What each role can say and tap. A handler takes apart, asks one use case, and hands back its reply."""
