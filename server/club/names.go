package club

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Collection is the middle part of a resource name: clubs/{club}/{collection}/{id}.
type Collection string

// The collections.
const (
	People      Collection = "people"
	Models      Collection = "models"
	Fields      Collection = "fields"
	Approvals   Collection = "approvals"
	Assessments Collection = "assessments"
	Incidents   Collection = "incidents"
	Lessons     Collection = "lessons"
	RulePacks   Collection = "rulePacks"
	Changes     Collection = "verdictChanges"
	Previews    Collection = "rulePackPreviews"
)

// partPattern is what a club's slug or an id may look like.
var partPattern = regexp.MustCompile(`^[a-z0-9]([a-z0-9-]{0,62}[a-z0-9])?$`)

// ValidID tells whether text can be a club's slug or the id of a record.
func ValidID(text string) bool {
	return partPattern.MatchString(text)
}

// ClubName is "clubs/{club}".
func ClubName(clubID string) string {
	return "clubs/" + clubID
}

// Name is "clubs/{club}/{collection}/{id}", or empty for an empty id.
func (c Collection) Name(clubID, id string) string {
	if id == "" {
		return ""
	}
	return ClubName(clubID) + "/" + string(c) + "/" + id
}

// RevisionName is "clubs/{club}/models/{model}/revisions/{number}".
func RevisionName(clubID, modelID string, number int32) string {
	return fmt.Sprintf("%s/revisions/%d", Models.Name(clubID, modelID), number)
}

// PhotoName is "clubs/{club}/incidents/{incident}/photos/{photo}".
func PhotoName(clubID, incidentID, photoID string) string {
	return Incidents.Name(clubID, incidentID) + "/photos/" + photoID
}

// ParseClub reads "clubs/{club}". Field is named in the error.
func ParseClub(field, name string) (clubID string, err error) {
	parts, err := parse(field, name, "clubs/{club}")
	if err != nil {
		return "", err
	}
	return parts[0], nil
}

// Parse reads "clubs/{club}/{collection}/{id}". Field is named in the error.
func (c Collection) Parse(field, name string) (clubID, id string, err error) {
	parts, err := parse(field, name, "clubs/{club}/"+string(c)+"/{id}")
	if err != nil {
		return "", "", err
	}
	return parts[0], parts[1], nil
}

// ParseRevision reads "clubs/{club}/models/{model}/revisions/{number}".
func ParseRevision(field, name string) (clubID, modelID string, number int32, err error) {
	const pattern = "clubs/{club}/models/{model}/revisions/{number}"
	parts, err := parse(field, name, pattern)
	if err != nil {
		return "", "", 0, err
	}
	n, err := strconv.ParseInt(parts[2], 10, 32)
	if err != nil || n < 1 {
		return "", "", 0, badName(field, pattern)
	}
	return parts[0], parts[1], int32(n), nil
}

// ParsePhoto reads "clubs/{club}/incidents/{incident}/photos/{photo}".
func ParsePhoto(field, name string) (clubID, incidentID, photoID string, err error) {
	parts, err := parse(field, name, "clubs/{club}/incidents/{incident}/photos/{photo}")
	if err != nil {
		return "", "", "", err
	}
	return parts[0], parts[1], parts[2], nil
}

// parse matches name against pattern part by part and returns what stands at the braces.
func parse(field, name, pattern string) ([]string, error) {
	have, want := strings.Split(name, "/"), strings.Split(pattern, "/")
	if len(have) != len(want) {
		return nil, badName(field, pattern)
	}
	var found []string
	for i, part := range want {
		switch {
		case !strings.HasPrefix(part, "{"):
			if have[i] != part {
				return nil, badName(field, pattern)
			}
		case !ValidID(have[i]):
			return nil, badName(field, pattern)
		default:
			found = append(found, have[i])
		}
	}
	return found, nil
}

func badName(field, pattern string) error {
	return RefuseField(field, "BAD_NAME", "must look like %s", pattern)
}
