package api

import "pitgate/server/club"

// paged is a list request.
type paged interface {
	GetPageSize() int32
	GetPageToken() string
}

// pageOf reads size and token of a list request.
func pageOf(req paged) club.Page {
	return club.Page{Size: req.GetPageSize(), After: req.GetPageToken()}
}

// showAll turns records into their wire form.
func showAll[A, B any](records []A, show func(A) (B, error)) ([]B, error) {
	out := make([]B, 0, len(records))
	for _, r := range records {
		shown, err := show(r)
		if err != nil {
			return nil, err
		}
		out = append(out, shown)
	}
	return out, nil
}
