package species

// told says of each rule that no plan and no Site shows what kind of advice it is;
// TestEveryRuleIsLookedAt holds it to the rules. Never changed.
var told = []struct{ code, kind string }{
	{"hole-arris", "bench"}, // edges of holes are rounded by hand
	{"pilot-soft", "bench"}, // a Fastener does not state the diameter at its root
	{"pilot-hard", "bench"},
	{"safety-dust", "safety"},
	{"safety-owner", "safety"},
	{"safety-children", "safety"},
	{"clean-dust", "safety"},
	{"clean-stop", "season"},
	{"clean-season", "season"},
	{"clean-kestrel-na", "season"},
	{"bee-renew", "season"},
	{"bedding", "care"},
	{"bat-colour", "siting"}, // how hot a place is, and what suits it there
	{"alien", "siting"},
	{"legal-nest-uk", "law"},
	{"legal-nest-us", "law"},
	{"legal-nest-eu", "law"},
	{"legal-barn-owl", "law"},
	{"licence-bat", "law"},
	{"law-local", "law"},
}

// kindOf is the kind of advice of a rule, "" where it is measured.
func kindOf(code string) string {
	for _, t := range told {
		if t.code == code {
			return t.kind
		}
	}
	return ""
}
