package workbench

import "context"

type nonceKey struct{}

// withNonce carries the word under which a page may bring styles of its own.
func withNonce(ctx context.Context, nonce string) context.Context {
	return context.WithValue(ctx, nonceKey{}, nonce)
}

func nonceOf(ctx context.Context) string {
	nonce, _ := ctx.Value(nonceKey{}).(string)
	return nonce
}
