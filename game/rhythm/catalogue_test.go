package rhythm_test

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// files makes a file system of rhythms by id; each text is added to one that is
// whole but for its name.
func files(texts map[string]string) fstest.MapFS {
	fsys := fstest.MapFS{}
	for id, text := range texts {
		fsys["rhythms/"+id+".txt"] = &fstest.MapFile{Data: []byte(text +
			"\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nsource: y\n")}
	}
	return fsys
}

func TestLoadOrder(t *testing.T) {
	fsys := files(map[string]string{"b": "name: b", "a": "name: a", "z": "name: z\ncore: yes"})
	fsys["rhythms/aa.txt"] = &fstest.MapFile{Data: []byte(
		"name: nine\nmetre: 9/8\ngrouping: 2+2+2+3\nskeleton: D-T-D-TTT\ntempo: 60 90 120 eighth\nmemory: all")}
	fsys["rhythms/readme.md"] = &fstest.MapFile{}
	fsys["other/c.txt"] = &fstest.MapFile{}
	c, err := rhythm.Load(fsys)
	require.NoError(t, err)
	require.Equal(t, []string{"z", "a", "b", "aa"}, c.IDs())
	for _, id := range c.IDs() {
		cycle, found := c.Get(id)
		require.True(t, found)
		require.Equal(t, id, cycle.ID)
		alone, err := rhythm.Read(fsys, id)
		require.NoError(t, err)
		require.Equal(t, cycle, alone)
	}
	_, err = rhythm.Read(fsys, "none")
	require.ErrorIs(t, err, fs.ErrNotExist)
	_, found := c.Get("A")
	require.False(t, found, "an id is exact")
}

func TestFind(t *testing.T) {
	c, err := rhythm.Load(files(map[string]string{
		"saidi":        "name: sa'idi\nscript: صعيدي\nspelling: saʿīdī\nspelling: makloub",
		"karsilama":    "name: karşılama\nspelling: kashlimah",
		"ciftetelli":   "name: çiftetelli\nspelling: τσιφτετέλι\nspelling: chifte telli",
		"samai-thaqil": "name: sama'i thaqil\nscript: سَماعي ثقيل",
		"wahda":        "name: wahda\nscript: وحدة",
		"romani":       "name: Roman 9/8",
		"ayyub":        "name: ayyub\nscript: أيوب",
	}))
	require.NoError(t, err)
	tests := []struct{ search, want string }{
		{"sa'idi", "saidi"}, {"SAIDI", "saidi"}, {"Sa’idi", "saidi"}, {"sa`idi", "saidi"}, {"ṣaʿīdī", "saidi"},
		{" saidi ", "saidi"}, {"sai\u0308di", "saidi"}, {"صعيدي", "saidi"}, {"صعيدى", "saidi"}, {"صَعـيدي", "saidi"}, {"Makloub", "saidi"},
		{"karsilama", "karsilama"}, {"KARŞILAMA", "karsilama"}, {"Karşılama", "karsilama"}, {"kars\u0327ılama", "karsilama"},
		{"ciftetelli", "ciftetelli"}, {"ÇİFTETELLİ", "ciftetelli"}, {"Chifte-Telli", "ciftetelli"}, {"ΤΣΙΦΤΕΤΕΛΙ", "ciftetelli"},
		{"samai thaqil", "samai-thaqil"}, {"سماعي ثقيل", "samai-thaqil"}, {"samai-thaqil", "samai-thaqil"},
		{"وحده", "wahda"}, {"ايوب", "ayyub"}, {"roman 9/8", "romani"}, {"Roman 9-8", "romani"},
	}
	for _, tt := range tests {
		t.Run(tt.search, func(t *testing.T) {
			cycle, found := c.Find(tt.search)
			require.True(t, found)
			require.Equal(t, tt.want, cycle.ID)
		})
	}
	for _, search := range []string{"", "'", "said", "saidii", "baladi"} {
		_, found := c.Find(search)
		require.False(t, found, "%q", search)
	}
}

func TestLoadMistakes(t *testing.T) {
	_, err := rhythm.Load(fstest.MapFS{})
	require.ErrorContains(t, err, "there is no file rhythms/*.txt")

	_, err = rhythm.Load(files(map[string]string{"a": "nam: a", "b": "name: b", "c": "name: c\nquiz: perhaps"}))
	require.ErrorContains(t, err, "rhythms/a.txt:1:1: unknown key 'nam'")
	require.ErrorContains(t, err, "rhythms/c.txt:2:7: 'quiz' is yes or no", "every wrong file is named")

	_, err = rhythm.Load(files(map[string]string{"a": "name: one\nspelling: ma'sum", "b": "name: two\nspelling: Masum"}))
	require.EqualError(t, err, "rhythms/b.txt: 'Masum' is a name of one already")

	_, err = rhythm.Load(fstest.MapFS{"rhythms/a.txt/b": &fstest.MapFile{}})
	require.Error(t, err, "a folder with the name of a rhythm")
}
