#!/usr/bin/env node
import '../dist/pullbook.mjs';
