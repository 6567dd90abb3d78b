package rhythm_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

func ids(cycles []*rhythm.Cycle) string {
	var all []string
	for _, c := range cycles {
		all = append(all, c.ID)
	}
	return strings.Join(all, " ")
}

// The five most used first (Wikipedia, Dumbek rhythms, lists them with ayyub as
// the main six), odd metres last.
func TestSuppliedOrder(t *testing.T) {
	require.Equal(t, "baladi ciftetelli maqsum masmudi-kabir saidi "+
		"ayyub fallahi karachi khaliji malfuf nawari wahda zaffa "+
		"devr-i-hindi karsilama nawakht roman-9 samai-thaqil", strings.Join(supplied(t).IDs(), " "))
}

// What is asked in a quiz: not where the sources differ, nawakht with its one
// source, or odd metres that nobody asked for.
func TestAnswers(t *testing.T) {
	const even = "baladi ciftetelli maqsum masmudi-kabir saidi ayyub fallahi khaliji malfuf wahda"
	require.Equal(t, even, ids(supplied(t).Answers(false)))
	require.Equal(t, even+" karsilama roman-9 samai-thaqil", ids(supplied(t).Answers(true)))
	for _, id := range []string{"karachi", "nawari", "zaffa", "devr-i-hindi"} {
		require.True(t, get(t, id).Differ, id)
	}
	for _, c := range supplied(t).Answers(true) {
		require.False(t, c.Differ, c.ID)
	}
}

// Rhythms that are learned side by side: pages that set them against one another
// are named in their files; the grouping is our own.
func TestFamily(t *testing.T) {
	families := map[string]string{
		"maqsum": "baladi maqsum saidi",
		"malfuf": "ayyub karachi khaliji malfuf",
		"wahda":  "ciftetelli masmudi-kabir wahda",
	}
	all := supplied(t)
	for _, id := range all.IDs() {
		family := get(t, id).Family
		want, shared := families[family]
		if !shared {
			want = id
		}
		require.Equal(t, want, ids(all.Family(family)))
	}
	require.Empty(t, all.Family(""))
	require.Empty(t, all.Family("none"))
}

// Names as the program writes them: maqsum, masmudi, sa'idi, sama'i, malfuf, and
// Turkish words in Turkish letters.
func TestSuppliedNames(t *testing.T) {
	for id, name := range map[string]string{
		"maqsum": "maqsum", "baladi": "baladi (masmudi saghir)", "saidi": "sa'idi", "masmudi-kabir": "masmudi kabir",
		"ciftetelli": "çiftetelli", "malfuf": "malfuf", "ayyub": "ayyub", "wahda": "wahda", "fallahi": "fallahi",
		"khaliji": "khaliji", "karachi": "karachi", "samai-thaqil": "sama'i thaqil", "karsilama": "karşılama",
		"roman-9": "Roman 9/8", "devr-i-hindi": "devr-i hindi", "nawakht": "nawakht", "zaffa": "zaffa", "nawari": "nawari",
	} {
		require.Equal(t, name, get(t, id).Name)
	}
}

// The spellings under which pages of the sources write them.
func TestSuppliedSpellings(t *testing.T) {
	for id, spellings := range map[string][]string{
		"maqsum":        {"Maqsoum", "maksoum", "Ma'sum", "masum", "مقسوم"},
		"baladi":        {"beledi", "Baladi", "بلدي", "masmoudi saghir", "Masmudi Saghir", "small masmoudi", "مصمودي صغير"},
		"saidi":         {"Sa'idi", "saidi", "Saiidi", "maqlub", "صعيدي"},
		"masmudi-kabir": {"masmudi", "Masmoudi Kebir", "big masmoudi", "مصمودي كبير"},
		"ciftetelli":    {"chiftetelli", "Chifte Telli", "ciftetelli", "Çiftetelli", "Τσιφτετέλι", "tsifteteli"},
		"malfuf":        {"malfouf", "leff", "ملفوف"},
		"ayyub":         {"ayoub", "Ayub", "zar", "أيوب", "ايوب", "زار"},
		"wahda":         {"wahdah", "وحدة", "وحده"},
		"fallahi":       {"fellahi", "felahi", "فلاحي"},
		"khaliji":       {"khaleeji", "Saudi", "khaligi", "خليجي"},
		"karachi":       {"kartachi", "كراتشي"},
		"samai-thaqil":  {"samai", "Sama'i Thaqil", "aksak semai", "سماعي ثقيل"},
		"karsilama":     {"karşılama", "KARŞILAMA", "karsilama", "kashlimah", "aksak"},
		"roman-9":       {"Romani 9", "Roman 9/8", "romani 9/8"},
		"devr-i-hindi":  {"devr-i hindî", "dawr hindi", "دور هندي"},
		"nawakht":       {"nawakhat", "نوخت"},
		"zaffa":         {"zeffa", "zaffah", "زفة", "زفه"},
		"nawari":        {"nawwari", "نوري", "نَوَري"},
	} {
		for _, spelling := range spellings {
			c, found := supplied(t).Find(spelling)
			require.True(t, found, spelling)
			require.Equal(t, id, c.ID, spelling)
		}
	}
	for _, left := range []string{"bamb", "jark", "wahda wa nuss", "laz", "katakofti", "bayou", "sombati"} {
		_, found := supplied(t).Find(left)
		require.False(t, found, left)
	}
}
