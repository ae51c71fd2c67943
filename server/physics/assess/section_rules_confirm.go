package assess

// confirmed judges a rule that a person answers for: it holds when somebody said yes by name on a day that still counts, fails when somebody said
// no, and is unknown otherwise. Where the rule asks for an officer's word, the owner's yes leaves it unknown.
func (p *pass) confirmed(f *Finding, rule *AppliedRule) {
	word, path := p.wordFor(rule.Key())
	now := localTimeOf(p.today().Time)
	if word == nil || word.Confirmed == nil {
		f.lacks([]string{"confirmations"}, "Nobody has confirmed it."+officerWanted(rule))
		return
	}
	f.From = []string{path}
	if !*word.Confirmed {
		f.Verdict, f.Note = VerdictFails, say("%s says that it is not so.", nameOr(word.By))
		return
	}
	on, dated := daysOf(word.Date)
	switch {
	case word.By == "" || !dated:
		f.refuseWord("confirmations", "The confirmation lacks a name or a date.")
	case yes(rule.Officer) && !yes(word.Officer):
		f.refuseWord("confirmations", say("%s says so.", word.By)+officerWanted(rule))
	case !now.known:
		f.refuseWord("day.time", "It cannot be told whether the confirmation still counts.")
	case on > now.days:
		f.refuseWord("confirmations", say("The confirmation is dated %s, after the day of the flight.", word.Date))
	case rule.ConfirmationDays != nil && now.days-on > int(*rule.ConfirmationDays):
		f.refuseWord("confirmations", say("Confirmed by %s on %s, %s before the flight; it counts for %s.", word.By, word.Date,
			dayWords(now.days-on), dayWords(int(*rule.ConfirmationDays))))
	default:
		f.Verdict, f.Note = VerdictHolds, say("Confirmed by %s on %s.", word.By, word.Date)
	}
}

// officerWanted is a further sentence where a rule asks for an officer's word.
func officerWanted(rule *AppliedRule) string {
	if yes(rule.Officer) {
		return " It takes a safety officer's word."
	}
	return ""
}

// refuseWord makes a confirmation that does not count unknown.
func (f *Finding) refuseWord(missing, note string) {
	f.From = nil
	f.lacks([]string{missing}, note)
}

// wordFor returns the last confirmation given for a rule, and its path: a later word takes the place of an earlier one.
func (p *pass) wordFor(key string) (*RuleConfirmation, string) {
	for i := len(p.in.Confirmations) - 1; i >= 0; i-- {
		if p.in.Confirmations[i].Rule == key {
			return &p.in.Confirmations[i], at("confirmations", i) + ".confirmed"
		}
	}
	return nil, ""
}

func nameOr(by string) string {
	if by == "" {
		return "Somebody"
	}
	return by
}
