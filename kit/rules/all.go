package rules

// All is every rule, in the order they are listed for people. A new rule is one
// more line here and one more file beside this one.
var All = []Rule{
	packedTooLittle,
	leftOver,
	usedButNotPacked,
	packedButNeverUsed,
	takenFromEmpty,
	plainOunces,
	noDensity,
	noAmount,
	noVessel,
	otherKind,
	containerOverfull,
	countsDisagree,
	toolNotListed,
	toolNeverUsed,
	essentialToolNotAnnounced,
	vagueAmount,
	vagueInstruction,
	typedAmountDisagrees,
	timeClaimedTooShort,
	missingStep,
	missingTrouble,
	missingPicture,
	shareOutsideLimits,
	pouredTooHot,
	netLessThanClaimed,
	doesNotDissolve,
	ratioOutsideLimits,
	piecesDoNotFit,
	usedTooLate,
	hardToRead,
	noVerbFirst,
	ambiguousAbbreviation,
	numberAtSentenceHead,
	unitsMixed,
	namedOtherwise,
	translationMissingStep,
	translationStale,
	translationDiffers,
	numberFormat,
}

// OnAccepting are the rules on the findings a maker has accepted. They need the
// list of findings and today's date, so that Accept tells them and not Check.
var OnAccepting = []Rule{
	acceptExpired,
	acceptWithoutReason,
	acceptMatchesNothing,
}
