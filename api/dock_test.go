package api

import (
	"bytes"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"net/http"
	"strings"
	"testing"
	"time"
)

// item is one entry of a phone's queue.
func item(key, kind, id string, version int, made time.Time, body string) string {
	return fmt.Sprintf(`{"key": %q, "kind": %q, "id": %q, "version": %d, "made_at": %q, "body": %s}`, key, kind, id, version, made.UTC().Format(time.RFC3339), body)
}

func lot(sent time.Time, items ...string) string {
	return fmt.Sprintf(`{"device": "phone of M", "sent_at": %q, "items": [%s]}`, sent.UTC().Format(time.RFC3339), strings.Join(items, ","))
}

func states(r reply) string {
	var all []string
	list, _ := r.body["items"].([]any)
	for _, one := range list {
		all = append(all, fmt.Sprint(at(one, "state")))
	}
	return strings.Join(all, " ")
}

func TestAQueueSentTwiceLandsOnce(t *testing.T) {
	s, a := served(t)
	now := a.Now()
	queue := lot(now, item("k1", "leak", "leak-a", 0, now, `{"rate": 9, "source": "rivet"}`), item("k2", "found", "found-a", 0, now, `{"finding": "plate", "thickness": "7,9"}`))
	first := ask(t, "POST", s.URL+"/api/v1/merge", queue, "Oakum-By", "M")
	if first.status != http.StatusOK || states(first) != "landed landed" {
		t.Fatalf("first: %d %s", first.status, first.text)
	}
	again := ask(t, "POST", s.URL+"/api/v1/merge", queue, "Oakum-By", "M")
	if states(again) != "already already" || again.body["revision"] != first.body["revision"] {
		t.Errorf("again: %s", again.text)
	}
	if list := ask(t, "GET", s.URL+"/api/v1/records/leak", ""); list.body["total"] != 1.0 {
		t.Errorf("leaks: %s", list.text)
	}
	if list := ask(t, "GET", s.URL+"/api/v1/records/delivery", ""); list.body["total"] != 1.0 {
		t.Errorf("deliveries: %s", list.text)
	}
}

func TestTwoEditsOfOneRecordAreBothKept(t *testing.T) {
	s, a := served(t)
	now := a.Now()
	merge := s.URL + "/api/v1/merge"
	ask(t, "POST", merge, lot(now, item("n", "found", "f", 0, now, `{"finding": "plate", "condition": "as seen"}`)), "Oakum-By", "M")
	if r := ask(t, "POST", merge, lot(now, item("e1", "found", "f", 1, now, `{"finding": "plate", "condition": "by M", "disposition": "renew"}`)), "Oakum-By", "M"); states(r) != "landed" {
		t.Fatalf("first edit: %s", r.text)
	}
	second := ask(t, "POST", merge, lot(now, item("e2", "found", "f", 1, now, `{"finding": "plate", "condition": "by H", "disposition": "leave"}`)), "Oakum-By", "H")
	if states(second) != "beside" {
		t.Fatalf("second edit: %s", second.text)
	}
	one := ask(t, "GET", s.URL+"/api/v1/records/found/f", "")
	if at(one.body, "body", "condition") != "by M" {
		t.Errorf("the record does not stand: %s", one.text)
	}
	list, _ := second.body["items"].([]any)
	clash := fmt.Sprint(at(list[0], "clash"))
	if kept := ask(t, "GET", s.URL+"/api/v1/records/clash/"+clash, ""); !strings.Contains(kept.text, "by H") {
		t.Errorf("the second edit is not kept: %s", kept.text)
	}
	if r := ask(t, "POST", merge, lot(now, item("e2", "found", "f", 1, now, `{"finding": "plate", "condition": "by H", "disposition": "leave"}`)), "Oakum-By", "H"); states(r) != "already" {
		t.Errorf("the second edit sent twice: %s", r.text)
	}
	if r := ask(t, "POST", s.URL+"/api/v1/clashes/"+clash, `{"take": "edit"}`, "Oakum-By", "S"); r.status != http.StatusOK {
		t.Fatalf("settling: %d %s", r.status, r.text)
	}
	if one := ask(t, "GET", s.URL+"/api/v1/records/found/f", ""); at(one.body, "body", "condition") != "by H" || one.body["version"] != 3.0 {
		t.Errorf("the edit was not taken: %s", one.text)
	}
	if r := ask(t, "POST", s.URL+"/api/v1/clashes/"+clash, `{"take": "standing"}`); r.status != http.StatusUnprocessableEntity {
		t.Errorf("settled twice: %d %s", r.status, r.text)
	}
}

func TestAnEditByAPhoneChangesNeitherMarkNorBasis(t *testing.T) {
	s, a := served(t)
	now := a.Now()
	made := ask(t, "POST", s.URL+"/api/v1/records/found", `{"id": "f", "mark": "public", "basis": "measured", "basis_note": "gauge 3", "body": {"finding": "plate"}}`)
	if made.status != http.StatusCreated && made.status != http.StatusOK {
		t.Fatalf("%d %s", made.status, made.text)
	}
	if r := ask(t, "POST", s.URL+"/api/v1/merge", lot(now, item("e", "found", "f", 1, now, `{"finding": "plate", "as_left": "primed"}`)), "Oakum-By", "M"); states(r) != "landed" {
		t.Fatalf("edit: %s", r.text)
	}
	one := ask(t, "GET", s.URL+"/api/v1/records/found/f", "")
	if at(one.body, "mark") != "public" || at(one.body, "basis") != "measured" || at(one.body, "basis_note") != "gauge 3" {
		t.Errorf("after the edit: %s", one.text)
	}
}

func TestAPhoneSetTo1970IsSaid(t *testing.T) {
	s, a := served(t)
	phone := time.Date(1970, 1, 1, 0, 12, 0, 0, time.UTC)
	r := ask(t, "POST", s.URL+"/api/v1/merge", lot(phone.Add(3*time.Minute), item("k", "leak", "l", 0, phone, `{"date": "1970-01-01", "time": "00:12", "rate": 9}`), item("k2", "leak", "l2", 0, phone, `{"date": "2020-05-01", "rate": 9}`)), "Oakum-By", "M")
	if clock := fmt.Sprint(r.body["clock"]); !strings.Contains(clock, "1 January 1970") || !strings.Contains(clock, "years behind") {
		t.Fatalf("clock: %s", r.text)
	}
	one := ask(t, "GET", s.URL+"/api/v1/records/leak/l", "")
	if want := a.Today().String(); at(one.body, "body", "date") != want || !strings.Contains(fmt.Sprint(one.body["from"]), "1970-01-01T00:12:00Z") {
		t.Errorf("dated %v, from %v; want %s with the phone's time beside", at(one.body, "body", "date"), one.body["from"], want)
	}
	if chosen := ask(t, "GET", s.URL+"/api/v1/records/leak/l2", ""); at(chosen.body, "body", "date") != "2020-05-01" {
		t.Errorf("a date that a person chose was moved: %s", chosen.text)
	}
}

func TestOneBadEntryHindersNoOther(t *testing.T) {
	s, a := served(t)
	now := a.Now()
	r := ask(t, "POST", s.URL+"/api/v1/merge", lot(now,
		item("1", "leak", "l1", 0, now, `{"rate": -4}`), item("2", "leak", "l2", 0, now, `{"rate": 4}`), item("3", "pot", "p", 0, now, `{"name": "mine"}`),
		item("4", "leak", "L 4", 0, now, `{}`), item("5", "leak", "l5", 7, now, `{}`), item("6", "starship", "x", 0, now, `{}`)), "Oakum-By", "M")
	if got := states(r); got != "refused landed refused refused refused refused" {
		t.Fatalf("%s: %s", got, r.text)
	}
	list, _ := r.body["items"].([]any)
	if at(list[0], "field") != "rate" || !strings.Contains(fmt.Sprint(at(list[0], "reason")), "-4") {
		t.Errorf("the refusal names neither field nor value: %v", list[0])
	}
}

// wide is the head of a PNG of so many pixels, with nothing behind it.
func wide(w, h uint32) []byte {
	b := append([]byte("\x89PNG\r\n\x1a\n"), 0, 0, 0, 13)
	head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32([]byte("IHDR"), w), h)
	head = append(head, 8, 2, 0, 0, 0)
	return binary.BigEndian.AppendUint32(append(b, head...), crc32.ChecksumIEEE(head))
}

func TestPhotographsAreLookedAt(t *testing.T) {
	s, _ := served(t)
	var small bytes.Buffer
	if err := png.Encode(&small, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	sum := sha256.Sum256(small.Bytes())
	for _, c := range []struct {
		what, query, data, says string
		status                  int
	}{
		{"a photograph", "?name=a.png&sha256=" + hex.EncodeToString(sum[:]), small.String(), hex.EncodeToString(sum[:]), 201},
		{"one that broke on the way", "?name=a.png&sha256=" + strings.Repeat("0", 64), small.String(), "broke on the way", 422},
		{"200 megapixels", "?name=big.png", string(wide(20000, 10000)), "200 megapixels", 422},
		{"a renamed program", "?name=photo.jpg", "MZ\x90\x00 and so on", "program", 422},
		{"a renamed text", "?name=photo.jpg", "hello", "no JPEG", 422},
		{"nothing", "?name=photo.jpg", "", "", 422},
	} {
		r := ask(t, "POST", s.URL+"/api/v1/photos"+c.query, c.data, "Content-Type", "application/octet-stream")
		if r.status != c.status && !(c.what == "nothing" && r.status == 400) || !strings.Contains(r.text, c.says) {
			t.Errorf("%s: %d %s", c.what, r.status, r.text)
		}
	}
}
