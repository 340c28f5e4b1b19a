"""Words that no paper of ours says of another bidder."""

UNKIND = ("cheap", "cheat", "hack", "rip-off", "lowball", "scam", "corner", "amateur", "shoddy",
          "greedy", "unlicensed")  # fmt: skip
